//! The terminal's door: reads files, asks the core, prints its answers.
//!
//! Why its own room: it holds no rule. If it were deleted, no knowledge of the trade would be lost.
//!
//! Invariants: every complaint goes to standard error, one line each; with `--json` only the document goes to standard output; nothing is said by colour alone.
//!
//! Exit: 0 every ruling passes; 1 one fails; 2 the input cannot be used; 3 none fails and something is not judged.
//! `solve` exits with 0 if the case has answers.
//! `lint` exits with 0 if it finds no defect, and with 1 if it finds one.
mod answers;
mod asks_page;
mod cable_rate_page;
mod field_page;
mod files;
mod judge_page;
mod lines;
mod lint;
mod masthead;
mod page;
mod printed;
mod rate_page;
mod solve;
mod starter;
mod time_made;
mod written;

use clap::{CommandFactory, Parser, Subcommand, ValueEnum};
use jointwright_drawing::{Style, Theme, half_section, leg_field};
use jointwright_joint::built::{self, FindingKind};
use jointwright_joint::form::json_schema;
use jointwright_joint::judge::Judged;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::Plan;
use jointwright_joint::{catalogue, job, judge, plan};
use jointwright_numerics::case;
use jointwright_paper::{FieldPicture, make_up_sheet};
use jointwright_wording::Tongue;
use jointwright_wording::label::{AskPageLabel, JudgePageLabel};
use std::io::{ErrorKind, IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Meaning of the exit codes.
const EXIT: &str = "Exit: 0 every ruling passes, 1 one fails, 2 the input cannot be used, 3 none fails and something is not judged, which may stop the work all the same: read the first lines. 0 never means \"build it\": that is decided by the people named for it.";

/// Meaning of the exit codes of `judge`.
const JUDGE_EXIT: &str = "Exit: 0 every reading is in its window, 1 one is out of it, 2 the input cannot be used, 3 none is out and something is not read, cannot be told or has no window. 0 says nothing about the plan, and never means \"go on\": that is decided by the people named for it.";

/// Meaning of the exit codes of `solve`.
const SOLVE_EXIT: &str = "Exit: 0 it has answers, each with its estimated error, settled or not; 2 the case cannot be used, has no answers, or a file cannot be written. An answer is a number of the drawing or tube given; it judges nothing.";

/// Meaning of the exit codes of `lint`.
const LINT_EXIT: &str = "Exit: 0 no defect found, 1 some found, 2 the catalogues cannot be used. Finding nothing does not mean that a table is right.";

/// Plans and checks medium-voltage cable joints: reads the cables that are in the vault and the parts on the truck, and says where every layer is cut, how far off it may be, and on whose word.
#[derive(Parser)]
#[command(
    version,
    max_term_width = 80,
    after_help = EXIT
)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Plan a joint: cuts, windows and rulings.
    #[command(after_help = EXIT)]
    Plan {
        /// Job file.
        job: PathBuf,
        /// Folder for the plan, its page, the make-up sheet and the pictures [default: `out/` and the job's name].
        #[arg(long)]
        out: Option<PathBuf>,
        /// Print only the document, as JSON; files only with --out.
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        moment: time_made::Arguments,
        /// Write what is not known as letters, one an addressee, into this folder [default: `out/`, the job's name and `ask`]; nothing else is printed or written.
        #[arg(long, value_name = "FOLDER", num_args = 0..=1, default_missing_value = "", conflicts_with_all = ["json", "out"])]
        ask: Option<String>,
        /// Write the form for readings as built into this file, with every slot of the hold points and no value; it must not exist yet. Nothing else is printed or written.
        #[arg(long, value_name = "FILE", conflicts_with_all = ["json", "out", "ask"])]
        blank: Option<PathBuf>,
    },
    /// Compare readings as built with the windows of the plan: in window, or stop and ask.
    #[command(after_help = JUDGE_EXIT)]
    Judge(judge_page::Arguments),
    /// Solve a case: the electric field or the temperatures of a section, or the pressure of a tube of rubber.
    #[command(after_help = SOLVE_EXIT)]
    Solve(solve::Arguments),
    /// Judge the electric field of a job's legs, and draw that of one.
    #[command(after_help = EXIT)]
    Field(field_page::Arguments),
    /// Rate a joint: loads and its temperatures, what governs, how long an emergency may last; or a run of cable without a joint.
    #[command(after_help = EXIT)]
    Rate(rate_page::Arguments),
    /// Criticise catalogues: rows, links, ranges and texts that contradict each other.
    #[command(after_help = LINT_EXIT)]
    Lint(lint::Arguments),
    /// Write a commented job to start from.
    New {
        /// File to write; it must not exist yet.
        file: PathBuf,
    },
    /// Print the script that completes commands and options in a shell.
    Completions {
        /// Shell that will run the script.
        shell: clap_complete::Shell,
    },
    /// Print the manual page, for `man -l -`.
    Man,
    /// Print the JSON Schema of a file.
    Schema {
        /// File to describe.
        of: SchemaOf,
    },
}

#[derive(Clone, Copy, ValueEnum)]
enum SchemaOf {
    /// The job file.
    Job,
    /// A catalogue file.
    Catalogue,
    /// plan.json.
    Plan,
    /// Rating of a joint, as `rate --json` prints it.
    Rating,
    /// Rating of a run of cable without a joint, as `rate --json` prints it.
    CableRating,
    /// A file of readings as built.
    Readings,
    /// Findings of readings as built, as `judge --json` prints them.
    Findings,
    /// A section case.
    Case,
    /// The answers to a section case.
    Answers,
}

/// Exit code for input that cannot be used.
const UNUSABLE: u8 = 2;

fn main() -> ExitCode {
    match Arguments::parse().command {
        Command::Plan {
            job,
            ask: Some(folder),
            moment,
            ..
        } => ask_letters(&job, &folder, &moment.made()),
        Command::Plan {
            job,
            blank: Some(file),
            ..
        } => write_blank(&job, &file),
        Command::Plan {
            job,
            out,
            json,
            moment,
            ..
        } => plan_joint(&job, out, json, &moment.made()),
        Command::Judge(arguments) => judge_readings(&arguments),
        Command::Solve(arguments) => solve_case(&arguments),
        Command::Field(arguments) => judge_fields(&arguments),
        Command::Rate(arguments) => rate_joint(&arguments),
        Command::Lint(arguments) => lint_catalogues(&arguments),
        Command::New { file } => write_starter(&file),
        Command::Completions { shell } => print_completions(shell),
        Command::Man => print_manual(),
        Command::Schema { of } => print_schema(of),
    }
}

fn plan_joint(path: &Path, out: Option<PathBuf>, json: bool, made: &str) -> ExitCode {
    let judged = files::read(path)
        .and_then(|order| files::with_judged(order, |judged| planned(judged, out, json, made)));
    judged.unwrap_or_else(|complaints| unusable(&complaints))
}

fn planned(judged: &Judged<'_>, out: Option<PathBuf>, json: bool, made: &str) -> ExitCode {
    let document = jointwright_wording::plan(judged).made_at(made);
    let text = match serde_json::to_string_pretty(&document) {
        Ok(text) => text + "\n",
        Err(error) => return failed(&format!("the plan cannot be written as JSON: {error}")),
    };
    let page = page::page(&document);
    let folder = match (&out, json) {
        (Some(folder), _) => Some(folder.clone()),
        (None, false) => Some(PathBuf::from("out").join(&document.job.id)),
        (None, true) => None,
    };
    let mut written = String::new();
    if let Some(folder) = &folder {
        let files = match files_of(judged, &document, &text, &page) {
            Ok(files) => files,
            Err(error) => return failed(&error),
        };
        if let Err(error) = files::write(folder, &files) {
            return failed(&error.to_string());
        }
        let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
        let tongue = Tongue::of_plan(&document);
        written = written::written(tongue, &folder.display().to_string(), &names);
    }
    let shown = if json {
        text
    } else {
        lines::styled(&page, wants_style()) + &written
    };
    ended(&shown, exit_code(judge::worst(&judged.rulings)))
}

/// Writes the open questions of a joint as letters; it writes none if no question is open.
fn ask_letters(path: &std::path::Path, folder: &str, made: &str) -> ExitCode {
    let judged = files::read(path)
        .and_then(|order| files::with_judged(order, |judged| asked(judged, folder, made)));
    judged.unwrap_or_else(|complaints| unusable(&complaints))
}

fn asked(judged: &Judged<'_>, folder: &str, made: &str) -> ExitCode {
    let document = jointwright_wording::plan(judged).made_at(made);
    let folder = if folder.is_empty() {
        PathBuf::from("out").join(&document.job.id).join("ask")
    } else {
        PathBuf::from(folder)
    };
    let letters = jointwright_wording::letters(&document);
    let files: Vec<(String, Vec<u8>)> = letters
        .into_iter()
        .map(|letter| {
            let text = asks_page::wrapped(&letter.text);
            (format!("{}.txt", letter.name), text.into_bytes())
        })
        .collect();
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    let shown = if files.is_empty() {
        Tongue::of_plan(&document).label(&AskPageLabel::NothingOpen) + "\n"
    } else if let Err(error) = files::write(&folder, &files) {
        return failed(&error.to_string());
    } else {
        let older = files::other_letters(&folder, &names);
        asks_page::written_letters(&document, &folder.display().to_string(), &names, &older)
    };
    ended(&shown, exit_code(judge::worst(&judged.rulings)))
}

/// Writes the form for readings as built.
fn write_blank(path: &Path, file: &Path) -> ExitCode {
    let text = files::read(path).and_then(|order| {
        let tongue = Tongue::of(&order.job);
        files::with_judged(order, |judged| {
            let plan = plan::mark_of(judged, &plan::program(), &tongue);
            let opening = tongue.label(&JudgePageLabel::Opening);
            let opening = match plan::invented(judged.inputs.order, &[], &tongue) {
                Some(invented) => format!("{invented}\n{opening}"),
                None => opening,
            };
            built::blank(judged, &plan.short, &opening)
        })
    });
    let text = match text {
        Ok(text) => text,
        Err(complaints) => return unusable(&complaints),
    };
    match files::write_new(file, &text) {
        Ok(()) => ended(&format!("Wrote {}\n", file.display()), ExitCode::SUCCESS),
        Err(error) => failed(&error.to_string()),
    }
}

fn judge_readings(arguments: &judge_page::Arguments) -> ExitCode {
    match judge_page::run(arguments) {
        Ok(done) => ended(
            &done.shown,
            match done.worst {
                FindingKind::InWindow => ExitCode::SUCCESS,
                FindingKind::StopAndAsk | FindingKind::NoWayBack => ExitCode::from(1),
                FindingKind::Missing | FindingKind::NoWindow | FindingKind::CannotTell => {
                    ExitCode::from(3)
                }
            },
        ),
        Err(lines) => unusable(&lines),
    }
}

fn exit_code(outcome: Outcome) -> ExitCode {
    match outcome {
        Outcome::Pass => ExitCode::SUCCESS,
        Outcome::Fail => ExitCode::from(1),
        Outcome::NotJudged => ExitCode::from(3),
    }
}

fn judge_fields(arguments: &field_page::Arguments) -> ExitCode {
    match field_page::run(arguments) {
        Ok(done) => ended(&done.shown, exit_code(done.outcome)),
        Err(lines) => {
            lines.iter().for_each(|line| say(line));
            ExitCode::from(UNUSABLE)
        }
    }
}

fn rate_joint(arguments: &rate_page::Arguments) -> ExitCode {
    match rate_page::run(arguments) {
        Ok(done) => ended(&done.shown, exit_code(done.outcome)),
        Err(lines) => {
            lines.iter().for_each(|line| say(line));
            ExitCode::from(UNUSABLE)
        }
    }
}

/// Files that `plan` writes, by name: document, page, make-up sheet, half-section of each leg.
fn files_of(
    judged: &Judged<'_>,
    document: &Plan,
    text: &str,
    page: &str,
) -> Result<Vec<(String, Vec<u8>)>, String> {
    let sheet = make_up_sheet(document, &pictures_of_fields(judged, document))
        .map_err(|error| format!("the make-up sheet cannot be made: {error}"))?;
    let style = Style {
        theme: Theme::Light,
    };
    let mut files = vec![
        ("plan.json".to_owned(), text.as_bytes().to_vec()),
        ("plan.txt".to_owned(), page.as_bytes().to_vec()),
        ("make-up-sheet.pdf".to_owned(), sheet),
    ];
    for leg in &document.legs {
        let svg = half_section(leg, document, &style);
        files.push((format!("leg-{}.svg", leg.mark), svg.into_bytes()));
    }
    Ok(files)
}

/// Small picture of the field of each leg whose field was solved.
fn pictures_of_fields(judged: &Judged<'_>, document: &Plan) -> Vec<FieldPicture> {
    let legs = judged.inputs.legs.iter();
    legs.filter_map(|leg| {
        let shown = leg.study.shown().ok()?;
        let field = leg_field(&leg.leg.id, shown, document);
        Some(FieldPicture {
            leg: leg.leg.id.clone(),
            svg: field.strip(),
        })
    })
    .collect()
}

fn solve_case(arguments: &solve::Arguments) -> ExitCode {
    let done = match solve::run(arguments) {
        Ok(done) => done,
        Err(lines) => {
            lines.iter().for_each(|line| say(line));
            return ExitCode::from(UNUSABLE);
        }
    };
    let shown = if arguments.json {
        match serde_json::to_string_pretty(&done.document) {
            Ok(text) => text + "\n",
            Err(error) => {
                return failed(&format!("the answers cannot be written as JSON: {error}"));
            }
        }
    } else {
        done.page
    };
    ended(&shown, ExitCode::SUCCESS)
}

fn lint_catalogues(arguments: &lint::Arguments) -> ExitCode {
    let done = match lint::run(arguments) {
        Ok(done) => done,
        Err(complaints) => return unusable(&complaints),
    };
    let shown = if arguments.json {
        match serde_json::to_string_pretty(&done.document) {
            Ok(text) => text + "\n",
            Err(error) => {
                return failed(&format!("the defects cannot be written as JSON: {error}"));
            }
        }
    } else {
        done.page
    };
    let code = u8::from(done.n_defects > 0);
    ended(&shown, ExitCode::from(code))
}

fn write_starter(file: &Path) -> ExitCode {
    match files::write_new(file, starter::STARTER) {
        Ok(()) => ended(&format!("Wrote {}\n", file.display()), ExitCode::SUCCESS),
        Err(error) => failed(&error.to_string()),
    }
}

fn print_schema(of: SchemaOf) -> ExitCode {
    let schema = match of {
        SchemaOf::Job => json_schema(&job::JOB, "jointwright job"),
        SchemaOf::Catalogue => json_schema(&catalogue::CATALOGUE, "jointwright catalogue"),
        SchemaOf::Plan => plan::schema(),
        SchemaOf::Rating => plan::rate_schema(),
        SchemaOf::CableRating => plan::cable_rate_schema(),
        SchemaOf::Readings => json_schema(&built::READINGS, "jointwright readings"),
        SchemaOf::Findings => built::schema(),
        SchemaOf::Case => case::schema(),
        SchemaOf::Answers => case::answers_schema(),
    };
    match serde_json::to_string_pretty(&schema) {
        Ok(text) => ended(&(text + "\n"), ExitCode::SUCCESS),
        Err(error) => failed(&format!("the schema cannot be written: {error}")),
    }
}

fn print_completions(shell: clap_complete::Shell) -> ExitCode {
    let mut script = Vec::new();
    clap_complete::generate(shell, &mut Arguments::command(), "jointwright", &mut script);
    print_bytes(&script)
}

/// Command that the argument reader adds.
const HELP: &str = "help";

/// Prints the manual: a page for the program, then one for each of its commands.
fn print_manual() -> ExitCode {
    let mut program = Arguments::command();
    // Only a built command knows its full name, which its page prints.
    program.build();
    let mut pages = Vec::new();
    let commands: Vec<clap::Command> = program
        .get_subcommands()
        .filter(|c| c.get_name() != HELP)
        .cloned()
        .collect();
    for command in std::iter::once(program).chain(commands) {
        if let Err(error) = clap_mangen::Man::new(command).render(&mut pages) {
            return failed(&format!("the manual cannot be written: {error}"));
        }
    }
    print_bytes(&pages)
}

fn print_bytes(bytes: &[u8]) -> ExitCode {
    ended(&String::from_utf8_lossy(bytes), ExitCode::SUCCESS)
}

/// Prints to standard output and returns the exit code; if printing fails, says so and returns 2.
///
/// A closed pipe gives no message: its reader has all that it wanted.
fn ended(text: &str, code: ExitCode) -> ExitCode {
    let mut out = std::io::stdout().lock();
    let written = out.write_all(text.as_bytes()).and_then(|()| out.flush());
    match written {
        Ok(()) => code,
        Err(error) if error.kind() == ErrorKind::BrokenPipe => ExitCode::from(UNUSABLE),
        Err(error) => failed(&format!("standard output cannot be written: {error}")),
    }
}

fn wants_style() -> bool {
    std::io::stdout().is_terminal() && std::env::var_os("NO_COLOR").is_none_or(|v| v.is_empty())
}

fn unusable(complaints: &[String]) -> ExitCode {
    for complaint in complaints {
        say(complaint);
    }
    ExitCode::from(UNUSABLE)
}

fn failed(message: &str) -> ExitCode {
    say(&format!("jointwright: {message}"));
    ExitCode::from(UNUSABLE)
}

/// Prints a line on standard error; if nobody reads it any more, the exit code still says enough.
fn say(line: &str) {
    let _ = writeln!(std::io::stderr(), "{line}");
}
