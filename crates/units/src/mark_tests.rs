//! Marks and printed windows: worked cases, then the laws.

use super::{
    Gauge, Mark, Tick, Toward, Window, bound_text, mark, metric_mark, metric_middle_mark,
    middle_mark, mm_beside, range_text, window_text,
};
use crate::{Interval, Length, Station};
use proptest::prelude::*;

/// Station of a length written as a diameter is.
#[track_caller]
fn at(text: &str) -> Station {
    Station::from(Length::parse_diameter(text).expect(text))
}

#[track_caller]
fn window(least: &str, greatest: &str) -> Option<Window> {
    Some(Window::new(at(least), at(greatest)).expect("bounds the right way round"))
}

/// Nominal, window, tick and direction; then inch, mm and tick of the mark.
#[track_caller]
fn check(
    (nominal, window, tick, toward): (&str, Option<Window>, Tick, Toward),
    (inch, mm, found): (Option<&str>, &str, Option<Tick>),
) {
    let mark = mark(at(nominal), window, tick, toward).expect("a mark");
    assert_eq!(
        (mark.inch.as_deref(), mark.mm.as_str(), mark.tick),
        (inch, mm, found)
    );
}

#[track_caller]
fn check_window(
    (least, greatest, tick): (&str, &str, Tick),
    inch: Option<(&str, &str)>,
    mm: (&str, &str),
) {
    let text = window_text(window(least, greatest).expect("a window"), tick);
    assert_eq!(
        text.inch.as_ref().map(|(a, b)| (a.as_str(), b.as_str())),
        inch
    );
    assert_eq!((text.mm.0.as_str(), text.mm.1.as_str()), mm);
}

use Toward::{Longer, Nearest, Shorter};

#[test]
fn the_millimetres_are_the_marks_own_and_not_the_nominals() {
    check(
        ("180 mm", None, Tick::SIXTEENTH, Nearest),
        (Some("7 1/16"), "179.4", Some(Tick::SIXTEENTH)),
    );
}

#[test]
fn the_direction_is_kept() {
    check(
        ("180 mm", None, Tick::SIXTEENTH, Longer),
        (Some("7 1/8"), "181.0", Some(Tick::SIXTEENTH)),
    );
    check(
        ("181 mm", None, Tick::EIGHTH, Nearest),
        (Some("7 1/8"), "181.0", Some(Tick::EIGHTH)),
    );
    check(
        ("180.975 mm", None, Tick::EIGHTH, Shorter),
        (Some("7 1/8"), "181.0", Some(Tick::EIGHTH)),
    );
    check(
        ("180.97 mm", None, Tick::EIGHTH, Shorter),
        (Some("7"), "177.8", Some(Tick::EIGHTH)),
    );
}

#[test]
fn a_tie_goes_up_unless_the_window_forbids_it() {
    check(
        ("7.03125 in", None, Tick::SIXTEENTH, Nearest),
        (Some("7 1/16"), "179.4", Some(Tick::SIXTEENTH)),
    );
    let below = window("7 in", "7 1/32 in");
    check(
        ("7.03125 in", below, Tick::SIXTEENTH, Nearest),
        (Some("7"), "177.8", Some(Tick::SIXTEENTH)),
    );
}

#[test]
fn a_tight_window_takes_a_finer_tick() {
    let tight = window("179.0 mm", "179.9 mm");
    check(
        ("179.5 mm", tight, Tick::EIGHTH, Nearest),
        (Some("7 1/16"), "179.4", Some(Tick::SIXTEENTH)),
    );
    let tighter = window("178.1 mm", "178.3 mm");
    check(
        ("178.2 mm", tighter, Tick::EIGHTH, Nearest),
        (Some("7 1/64"), "178.2", Some(Tick::SIXTY_FOURTH)),
    );
}

#[test]
fn a_window_without_a_sixty_fourth_is_marked_in_millimetres() {
    let between = window("178.25 mm", "178.55 mm");
    check(
        ("178.4 mm", between, Tick::EIGHTH, Nearest),
        (None, "178.4", None),
    );
    check(
        ("178.44 mm", between, Tick::EIGHTH, Longer),
        (None, "178.5", None),
    );
    check(
        (
            "178.44 mm",
            window("178.43 mm", "178.48 mm"),
            Tick::EIGHTH,
            Nearest,
        ),
        (None, "178.44", None),
    );
}

#[test]
fn the_printed_millimetres_lie_in_the_window_too() {
    // 179.4 would lie above this window though 7 1/16 in is 179.3875 mm.
    let window = window("179.3 mm", "179.39 mm");
    check(
        ("179.38 mm", window, Tick::SIXTEENTH, Nearest),
        (Some("7 1/16"), "179.39", Some(Tick::SIXTEENTH)),
    );
}

#[test]
fn a_window_of_one_tick_prints_it_exactly() {
    let only = window("7 1/16 in", "7 1/16 in");
    check(
        ("7 1/16 in", only, Tick::EIGHTH, Nearest),
        (Some("7 1/16"), "179.3875", Some(Tick::SIXTEENTH)),
    );
}

#[test]
fn a_window_of_one_odd_half_nanometre_is_printed_to_seven_decimals() {
    let odd = Station::from_half_nm(358_800_001);
    let mark =
        mark(odd, Window::new(odd, odd), Tick::SIXTEENTH, Shorter).expect("the station itself");
    assert_eq!(mark.station, odd);
    assert_eq!(mark.value, odd.floor());
    assert_eq!(
        (mark.inch, mark.mm.as_str(), mark.tick),
        (None, "179.4000005", None)
    );
}

#[test]
fn a_direction_that_leaves_the_window_has_no_mark() {
    let window = window("7 in", "8 in");
    assert_eq!(mark(at("6 in"), window, Tick::SIXTEENTH, Shorter), None);
    assert_eq!(mark(at("9 in"), window, Tick::SIXTEENTH, Longer), None);
    check(
        ("6 in", window, Tick::SIXTEENTH, Longer),
        (Some("7"), "177.8", Some(Tick::SIXTEENTH)),
    );
    check(
        ("9 in", window, Tick::SIXTEENTH, Nearest),
        (Some("8"), "203.2", Some(Tick::SIXTEENTH)),
    );
}

#[test]
fn negative_marks_carry_their_sign_and_nought_does_not() {
    let minus = mark(-at("180 mm"), None, Tick::SIXTEENTH, Longer).expect("a mark");
    assert_eq!(
        (minus.inch.as_deref(), minus.mm.as_str()),
        (Some("-7 1/16"), "-179.4")
    );
    let nought = mark(-at("0.01 mm"), None, Tick::SIXTEENTH, Nearest).expect("a mark");
    assert_eq!(
        (nought.inch.as_deref(), nought.mm.as_str()),
        (Some("0"), "0.0")
    );
}

#[test]
fn ticks_end_at_sixty_fourths() {
    assert_eq!(Tick::EIGHTH.ladder().last(), Some(Tick::SIXTY_FOURTH));
    assert_eq!(Tick::SIXTY_FOURTH.finer(), None);
    assert_eq!(Tick::SIXTEENTH.size() * 16, Length::INCH);
    assert_eq!(Tick::SIXTEENTH.to_string(), "1/16 in");
}

#[test]
fn a_window_is_rounded_inward() {
    check_window(
        ("179.31 mm", "182.49 mm", Tick::SIXTEENTH),
        Some(("7 1/16", "7 1/8")),
        ("179.4", "182.4"),
    );
    check_window(
        ("7 in", "7 1/8 in", Tick::SIXTEENTH),
        Some(("7", "7 1/8")),
        ("177.8", "180.9"),
    );
}

#[test]
fn a_window_that_rounding_would_empty_is_printed_finer() {
    // It holds 7 1/64 in alone, and one tick is no window.
    check_window(
        ("178.1 mm", "178.3 mm", Tick::EIGHTH),
        None,
        ("178.1", "178.3"),
    );
    check_window(
        ("178.31 mm", "178.39 mm", Tick::EIGHTH),
        None,
        ("178.31", "178.39"),
    );
    check_window(
        ("178.305 mm", "178.395 mm", Tick::EIGHTH),
        None,
        ("178.31", "178.39"),
    );
}

#[test]
fn a_window_the_wrong_way_round_is_none() {
    assert_eq!(Window::new(at("2 mm"), at("1 mm")), None);
}

/// A printed millimetre figure as a station, by a path that shares nothing with the printer.
fn printed(mm: &str) -> i128 {
    let (sign, digits) = mm.strip_prefix('-').map_or((1, mm), |rest| (-1, rest));
    let (whole, decimals) = digits.split_once('.').expect("one decimal at least");
    let tenth_nm: i128 = format!("{whole}{decimals:0<7}").parse().expect("digits");
    assert_eq!(tenth_nm % 5, 0, "`{mm}` is no whole half-nanometre");
    sign * tenth_nm / 5
}

fn decimals(mm: &str) -> u32 {
    u32::try_from(mm.len() - mm.find('.').expect("a point") - 1).expect("few decimals")
}

/// Half-nanometres up to about a metre either way, and windows from no width to some tens of millimetres.
fn any_case() -> impl Strategy<Value = (Station, Option<Window>, Tick, Toward)> {
    let width = prop_oneof![0_i64..10, 0_i64..1_000, 0_i64..1_000_000, 0_i64..60_000_000];
    let offset = prop_oneof![
        -10_i64..10,
        -2_000_000_i64..2_000_000,
        -60_000_000_i64..60_000_000
    ];
    let window = proptest::option::of((offset, width));
    let tick = prop::sample::select(vec![
        Tick::EIGHTH,
        Tick::SIXTEENTH,
        Tick::THIRTY_SECOND,
        Tick::SIXTY_FOURTH,
    ]);
    let toward = prop::sample::select(vec![Nearest, Shorter, Longer]);
    // Every other nominal is a whole sixty-fourth, where the edges are.
    let nominal = prop_oneof![
        -2_000_000_000_i64..2_000_000_000,
        (-2_500_i64..2_500).prop_map(|n| n * 793_750)
    ];
    (nominal, window, tick, toward).prop_map(|(nominal, window, tick, toward)| {
        let window = window.and_then(|(offset, width)| {
            let least = nominal + offset;
            Window::new(
                Station::from_half_nm(least),
                Station::from_half_nm(least + width),
            )
        });
        (Station::from_half_nm(nominal), window, tick, toward)
    })
}

/// Whether the window holds any value on the wanted side.
fn has_room(nominal: Station, window: Option<Window>, toward: Toward) -> bool {
    window.is_none_or(|w| match toward {
        Nearest => true,
        Shorter => w.least() <= nominal,
        Longer => w.greatest() >= nominal,
    })
}

fn check_laws(
    nominal: Station,
    window: Option<Window>,
    toward: Toward,
    mark: &Mark,
) -> Result<(), TestCaseError> {
    let contains = |s| window.is_none_or(|w| w.contains(s));
    prop_assert!(contains(mark.station));
    match toward {
        Nearest => {}
        Shorter => prop_assert!(mark.station <= nominal),
        Longer => prop_assert!(mark.station >= nominal),
    }
    prop_assert_eq!(mark.value, mark.station.floor());
    let is_whole_nm = mark.station == Station::from(mark.value);
    prop_assert!(is_whole_nm || mark.mm.ends_with('5') && decimals(&mark.mm) == 7);
    let mm = printed(&mark.mm);
    let half_nm = i128::from(mark.station.half_nm());
    prop_assert!(contains(Station::from_half_nm(
        i64::try_from(mm).expect("in range")
    )));
    // Half a unit of the last printed decimal: 10^6 half-nanometres are half a millimetre.
    let scale = 10_i128.pow(decimals(&mark.mm));
    prop_assert!(
        (mm - half_nm).abs() * scale <= 1_000_000,
        "{} for {:?}",
        mark.mm,
        mark.station
    );
    prop_assert_eq!(mark.inch.is_some(), mark.tick.is_some());
    match (&mark.inch, mark.tick) {
        (Some(inch), Some(tick)) => {
            prop_assert_eq!(mark.value.nm() % tick.size().nm(), 0);
            let size = Length::parse_cut(&format!("{} in", inch.trim_start_matches('-')));
            prop_assert_eq!(size, Ok(mark.value.abs()));
        }
        _ => prop_assert_eq!(mm, half_nm),
    }
    Ok(())
}

proptest! {
    #[test]
    fn a_mark_keeps_window_direction_and_its_own_millimetres((nominal, window, tick, toward) in any_case()) {
        let mark = mark(nominal, window, tick, toward);
        prop_assert_eq!(mark.is_some(), has_room(nominal, window, toward));
        if let Some(mark) = mark {
            check_laws(nominal, window, toward, &mark)?;
        }
    }

    #[test]
    fn no_other_tick_that_fits_is_nearer((nominal, window, tick, toward) in any_case()) {
        let Some(mark) = mark(nominal, window, tick, toward) else { return Ok(()) };
        let fits = |s: Station| window.is_none_or(|w| w.contains(s)) && match toward {
            Nearest => true,
            Shorter => s <= nominal,
            Longer => s >= nominal,
        };
        let distance = |s: Station| (s.half_nm() - nominal.half_nm()).abs();
        // Every tick within 40 of the nominal at the given tick, by brute force.
        let step = tick.size().nm() * 2;
        let middle = nominal.half_nm().div_euclid(step);
        let best = (middle - 40..=middle + 40)
            .map(|n| Station::from_half_nm(n * step))
            .filter(|s| fits(*s))
            .min_by_key(|s| distance(*s));
        if let Some(best) = best {
            prop_assert_eq!(mark.tick, Some(tick));
            prop_assert_eq!(distance(mark.station), distance(best));
        }
    }

    #[test]
    fn a_printed_window_is_inside_the_window((_, window, tick, _) in any_case()) {
        let Some(window) = window else { return Ok(()) };
        let text = window_text(window, tick);
        let (least, greatest) = (printed(&text.mm.0), printed(&text.mm.1));
        prop_assert!(i128::from(window.least().half_nm()) <= least);
        prop_assert!(least <= greatest);
        prop_assert!(greatest <= i128::from(window.greatest().half_nm()));
        if let Some((least, greatest)) = text.inch {
            let read = |inch: &str| {
                let size = Length::parse_cut(&format!("{} in", inch.trim_start_matches('-')))
                    .expect("an inch that is read");
                Station::from(if inch.starts_with('-') { -size } else { size })
            };
            prop_assert!(window.least() <= read(&least));
            prop_assert!(read(&least) <= read(&greatest));
            prop_assert!(read(&greatest) <= window.greatest());
        } else {
            // No two sixty-fourths lie in it, and none lies in a window without width.
            let step = 2 * i128::from(Length::INCH_64TH.nm());
            let [low, high] = [window.least(), window.greatest()].map(|s| i128::from(s.half_nm()));
            let n_ticks = high.div_euclid(step) - (low - 1).div_euclid(step);
            prop_assert!(n_ticks <= i128::from(low != high), "{n_ticks} ticks");
        }
    }

    #[test]
    fn extreme_stations_do_not_panic(nominal in any::<i64>(), a in any::<i64>(), b in any::<i64>()) {
        let window = Window::new(Station::from_half_nm(a.min(b)), Station::from_half_nm(a.max(b)));
        let nominal = Station::from_half_nm(nominal);
        for toward in [Nearest, Shorter, Longer] {
            prop_assert_eq!(
                mark(nominal, window, Tick::EIGHTH, toward).is_some(),
                has_room(nominal, window, toward)
            );
        }
    }
}

#[test]
fn the_ends_of_the_axis_have_marks() {
    for nominal in [i64::MIN, i64::MAX].map(Station::from_half_nm) {
        for toward in [Nearest, Shorter, Longer] {
            assert!(mark(nominal, None, Tick::EIGHTH, toward).is_some());
        }
    }
}

fn decimal(text: &str) -> f64 {
    text.parse()
        .expect("a printed millimetre figure is a decimal")
}

#[test]
fn a_mark_beside_its_window_is_printed_inside_it() {
    // 2 1/4 in is 57.15 mm, which is also the end of this window.
    let window = Window::new(
        Station::from(Length::from_nm(56_000_000)),
        Station::from(Length::from_nm(57_150_000)),
    )
    .unwrap();
    let nominal = window.greatest();
    let mark = mark(nominal, Some(window), Tick::SIXTEENTH, Toward::Nearest).unwrap();
    let (mm, (low, high)) = mm_beside(&mark, window);
    assert_eq!(
        (mm.as_str(), low.as_str(), high.as_str()),
        ("57.15", "56.00", "57.15")
    );
}

proptest! {
    #[test]
    fn mark_and_window_are_printed_alike_and_the_mark_lies_inside(
        nominal in 0i64..1_000_000_000, down in 0i64..20_000_000, up in 0i64..20_000_000,
    ) {
        let window = Window::new(Station::from_half_nm(nominal - down), Station::from_half_nm(nominal + up)).unwrap();
        let mark = mark(Station::from_half_nm(nominal), Some(window), Tick::SIXTEENTH, Toward::Nearest).unwrap();
        let (mm, (low, high)) = mm_beside(&mark, window);
        prop_assert!(decimal(&low) <= decimal(&mm) && decimal(&mm) <= decimal(&high));
        prop_assert!(decimal(&low) >= window.least().mm() && decimal(&high) <= window.greatest().mm());
        let decimals = |t: &str| t.split_once('.').map_or(0, |(_, d)| d.len());
        prop_assert!(decimals(&mm) == decimals(&low) && decimals(&low) == decimals(&high));
    }
}

#[test]
fn a_metric_mark_is_a_whole_millimetre_where_the_window_holds_one() {
    let mm = |nominal: &str, window: Option<Window>| metric_mark(at(nominal), window).map(|m| m.mm);
    assert_eq!(mm("123.825 mm", None).as_deref(), Some("124"));
    assert_eq!(
        mm("54.0 mm", window("54.2 mm", "56.0 mm")).as_deref(),
        Some("55")
    );
    assert_eq!(
        mm("54.0 mm", window("54.22 mm", "54.38 mm")).as_deref(),
        Some("54.3")
    );
}

proptest! {
    #[test]
    fn a_metric_mark_lies_in_its_window(nominal in 0i64..1_000_000_000, down in 0i64..9_000_000, up in 0i64..9_000_000) {
        let window = Window::new(Station::from_half_nm(nominal - down), Station::from_half_nm(nominal + up)).unwrap();
        let mark = metric_mark(Station::from_half_nm(nominal), Some(window)).unwrap();
        prop_assert!(window.contains(mark.station));
        prop_assert_eq!(decimal(&mark.mm), mark.station.mm());
    }
}

#[track_caller]
fn check_middle(least: &str, greatest: &str, inch: Option<&str>, mm: &str, whole_mm: &str) {
    let window = window(least, greatest).expect("a window");
    let mark = middle_mark(window, Tick::SIXTEENTH).expect("a mark");
    assert_eq!((mark.inch.as_deref(), mark.mm.as_str()), (inch, mm));
    let mark = metric_middle_mark(window).expect("a mark");
    assert_eq!((mark.inch, mark.mm.as_str()), (None, whole_mm));
}

#[test]
fn a_mark_stands_in_the_middle_of_its_window() {
    // Minus zero, plus 1/8 in: in the middle and not at the edge.
    check_middle("2 in", "2 1/8 in", Some("2 1/16"), "52.4", "52");
    // 56.75 to 59.33: the sixteenths in it are 57.15 and 58.74; the thirty-second between them leaves equal room on both sides.
    check_middle("56.75 mm", "59.33 mm", Some("2 9/32"), "57.9", "58");
    check_middle("196 mm", "200 mm", Some("7 13/16"), "198.4", "198");
    // Narrower than two sixty-fourths: any tick in it.
    check_middle("178.1 mm", "178.3 mm", Some("7 1/64"), "178.2", "178.2");
    check_middle("178.25 mm", "178.55 mm", None, "178.4", "178.4");
    check_middle("2 in", "2 in", Some("2"), "50.8", "50.8");
}

#[test]
fn a_window_is_never_one_tick_alone() {
    // One sixteenth, two thirty-seconds.
    check_window(
        ("51.0 mm", "53.5 mm", Tick::SIXTEENTH),
        Some(("2 1/32", "2 3/32")),
        ("51.0", "53.5"),
    );
    // One sixty-fourth: the window stands in millimetres.
    check_window(
        ("178.1 mm", "178.3 mm", Tick::SIXTEENTH),
        None,
        ("178.1", "178.3"),
    );
    check_window(
        ("2 in", "2 in", Tick::SIXTEENTH),
        Some(("2", "2")),
        ("50.8", "50.8"),
    );
}

#[track_caller]
fn check_range(least: &str, greatest: &str, inch: (&str, &str), mm: (&str, &str)) {
    let length = |text: &str| Length::parse_diameter(text).expect(text);
    let range = Interval::new(length(least), length(greatest)).expect("bounds in order");
    let text = range_text(range);
    assert_eq!((text.inch.0.as_str(), text.inch.1.as_str()), inch);
    assert_eq!((text.mm.0.as_str(), text.mm.1.as_str()), mm);
}

#[test]
fn a_range_of_diameters_is_rounded_inward_in_both_units() {
    check_range(
        "0.830 in",
        "1.220 in",
        ("0.830", "1.220"),
        ("21.09", "30.98"),
    );
    check_range("17.5 mm", "34.0 mm", ("0.689", "1.338"), ("17.5", "34.0"));
    check_range("12 mm", "40 mm", ("0.473", "1.574"), ("12.0", "40.0"));
    // No thousandth lies inside, so a finer step is taken.
    check_range(
        "25.41 mm",
        "25.42 mm",
        ("1.0004", "1.0007"),
        ("25.41", "25.42"),
    );
}

#[test]
fn a_bound_is_rounded_to_the_side_that_is_permitted() {
    let length = |text: &str| Length::parse_diameter(text).expect(text);
    let check = |text: &str, toward, gauge, expected: &str| {
        assert_eq!(bound_text(length(text), toward, gauge), expected, "{text}");
    };
    use Gauge::{Calliper, Rule};
    check("3 mm", Shorter, Calliper, "0.118 in (3.0 mm)");
    check("3 mm", Longer, Calliper, "0.119 in (3.0 mm)");
    check("3 mm", Shorter, Rule, "7/64 in (3.0 mm)");
    check("75 mm", Longer, Rule, "2 61/64 in (75.0 mm)");
    check("75 mm", Shorter, Rule, "2 15/16 in (75.0 mm)");
    check("1/8 in", Shorter, Rule, "1/8 in (3.17 mm)");
    check("1/8 in", Longer, Rule, "1/8 in (3.18 mm)");
    check("1/8 in", Longer, Calliper, "0.125 in (3.18 mm)");
    // Below a sixteenth, a sixty-fourth is too coarse.
    check("0.3 mm", Longer, Rule, "0.012 in (0.3 mm)");
    check("0.0094 mm", Longer, Calliper, "0.00038 in (0.0094 mm)");
    check("0.000376 mm", Shorter, Calliper, "0.00001 in (0.00037 mm)");
    assert_eq!(
        bound_text(Length::ZERO - length("20 mm"), Shorter, Rule),
        "-51/64 in (-20.0 mm)"
    );
}

proptest! {
    #[test]
    fn a_mark_in_the_middle_lies_inside_and_leaves_a_quarter_wherever_a_sixty_fourth_does(
        least in -1_000_000_000_i64..1_000_000_000,
        width in 0_i64..20_000_000,
    ) {
        let window = Window::new(Station::from_half_nm(least), Station::from_half_nm(least + width)).expect("in order");
        for mark in [middle_mark(window, Tick::SIXTEENTH), metric_middle_mark(window)] {
            let mark = mark.expect("a mark");
            prop_assert!(window.contains(mark.station));
        }
        // A tick is at most half a sixty-fourth from the middle.
        let mark = middle_mark(window, Tick::SIXTEENTH).expect("a mark");
        if width >= 2 * 2 * 396_875 {
            prop_assert!(mark.tick.is_some());
            let at = mark.station.half_nm();
            prop_assert!(4 * (at - least) >= width && 4 * (least + width - at) >= width);
        }
        let text = window_text(window, Tick::SIXTEENTH);
        if let Some((low, high)) = &text.inch && least > 0 {
            let read = |text: &str| Station::from(Length::parse_cut(&format!("{text} in")).expect(text));
            prop_assert!(low != high || width == 0);
            prop_assert!(window.contains(read(low)) && window.contains(read(high)));
            if mark.tick.is_some() {
                prop_assert!(read(low) <= mark.station && mark.station <= read(high));
            }
        }
    }

    #[test]
    fn no_printed_bound_of_a_range_lies_outside(
        least in 1_i64..200_000_000,
        width in 0_i64..50_000_000,
    ) {
        let range = Interval::new(Length::from_nm(least), Length::from_nm(least + width)).expect("in order");
        let text = range_text(range);
        for mm in [&text.mm.0, &text.mm.1] {
            let read = Length::parse_diameter(&format!("{mm} mm")).expect(mm);
            prop_assert!(range.contains(read), "{mm} mm is outside");
        }
        for inch in [&text.inch.0, &text.inch.1] {
            if !inch.is_empty() {
                let read = Length::parse_diameter(&format!("{inch} in")).expect(inch);
                prop_assert!(range.contains(read), "{inch} in is outside");
            }
        }
        prop_assert_eq!(text.inch.0.is_empty(), text.inch.1.is_empty());
    }
}
