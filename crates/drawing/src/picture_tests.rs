//! Pictures of a coaxial slice whose field is known, on a mesh made by hand.

use crate::{Caption, Mark, field_picture};
use jointwright_numerics::mesh::Mesh;
use jointwright_numerics::outline::{Curve, Outline, Point, Region, Shape, Side};

/// A slice 40 mm long between r = 10 and 30 mm.
fn outline() -> Outline {
    let points = [(0.01, 0.0), (0.03, 0.0), (0.03, 0.04), (0.01, 0.04)];
    let tags = ["lower", "outer", "upper", "inner"];
    let curve = |at: usize| Curve {
        from: at,
        to: (at + 1) % 4,
        shape: Shape::Line,
        tag: tags[at].to_owned(),
    };
    let side = |curve_index| Side {
        curve_index,
        is_reversed: false,
    };
    Outline {
        points: points.iter().map(|(r, z)| Point::new(*r, *z)).collect(),
        curves: (0..4).map(curve).collect(),
        regions: vec![Region {
            name: "wall".to_owned(),
            boundary: (0..4).map(side).collect(),
        }],
    }
}

/// A mesh of n × n squares, each cut in two, with the potential of a cable of 10 kV.
fn solved(n: u32) -> (Mesh, Vec<[f64; 2]>) {
    let wide = 2 * n + 1;
    let mut mesh = Mesh::default();
    for row in 0..wide {
        for column in 0..wide {
            let share = |at: u32| f64::from(at) / f64::from(wide - 1);
            mesh.nodes
                .push(Point::new(0.01 + 0.02 * share(column), 0.04 * share(row)));
        }
    }
    let node = |column: u32, row: u32| row * wide + column;
    for row in (0..2 * n).step_by(2) {
        for column in (0..2 * n).step_by(2) {
            let at = |c: u32, r: u32| node(column + c, row + r);
            mesh.triangles
                .push([at(0, 0), at(2, 0), at(0, 2), at(1, 0), at(1, 1), at(0, 1)]);
            mesh.triangles
                .push([at(2, 2), at(0, 2), at(2, 0), at(1, 2), at(1, 1), at(2, 1)]);
            mesh.region.extend([0, 0]);
        }
    }
    let volts = |p: &Point| [10_000.0 * (0.03 / p.r).ln() / 3.0_f64.ln(), 0.0];
    let potential = mesh.nodes.iter().map(volts).collect();
    (mesh, potential)
}

fn caption() -> Caption {
    let mark = |label: &str, r: f64| Mark {
        label: label.to_owned(),
        at: Point::new(r, 0.02),
    };
    Caption {
        title: "slice <1>".to_owned(),
        about: "invented & small".to_owned(),
        conductors: vec!["inner".to_owned(), "outer".to_owned()],
        marks: vec![
            mark("E 1 kV/mm", 0.01),
            mark("phi 10 kV", 0.01),
            mark("far", 0.03),
        ],
    }
}

#[test]
fn a_picture_says_what_it_is_and_marks_its_places_once() {
    let (mesh, potential) = solved(20);
    let svg = field_picture(&outline(), &mesh, &potential, &caption());
    for words in [
        "slice &lt;1&gt;",
        "invented &amp; small",
        "Computed from the drawing given; nobody has judged it.",
        "1: E 1 kV/mm; phi 10 kV",
        "2: far",
        "from 0 % at 0 kV to 100 % at 10.0 kV",
        "r and z are drawn to the same scale.",
        "z in mm, along the axis",
        ">50 %<",
    ] {
        assert!(svg.contains(words), "`{words}` is not in {svg}");
    }
    assert!(svg.starts_with("<svg ") && svg.ends_with("</svg>\n"));
    assert_eq!(svg.matches("stroke-width=\"2.4\"").count(), 1);
}

#[test]
fn bands_end_where_the_field_passes_their_level() {
    // |E| = 10 kV / (r ln 3), from 0.910 kV/mm at the inner rim to 0.303 at the outer one.
    let (mesh, potential) = solved(40);
    let svg = field_picture(&outline(), &mesh, &potential, &caption());
    let fills = svg
        .lines()
        .filter(|line| line.starts_with("<path fill=\"#"))
        .count();
    // The step is 0.1 kV/mm, so each of the bands from 0, 0.1, … 0.9 contains something.
    assert!(svg.contains(">0.9<") && svg.contains(">0.1<"));
    assert_eq!(fills, 10);
    // The band from 0.4 on ends at r = 22.756 mm: 28 of 30 mm of height are 560 picture points.
    let level = svg
        .lines()
        .filter(|line| line.starts_with("<path fill=\"#"))
        .nth(4);
    let path = level
        .and_then(|line| line.split("d=\"M").nth(1))
        .expect("there is a path");
    let scale = 560.0 / 30.0;
    let expected = (30.0 - 22.756) * scale;
    let numbers: Vec<f64> = path
        .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
        .filter_map(|number| number.parse().ok())
        .collect();
    let mut y = 0.0;
    let (mut least, mut greatest) = (f64::INFINITY, f64::NEG_INFINITY);
    for pair in numbers.chunks(2).filter(|pair| pair.len() == 2) {
        y += pair[1];
        least = f64::min(least, y);
        greatest = f64::max(greatest, y);
    }
    // From the level to the inner rim at 10 mm.
    let height = (30.0 - 10.0) * scale - expected;
    assert!(
        (greatest - least - height).abs() < 1.0,
        "{least} to {greatest}, not {height}"
    );
    // The twin: a cable with another voltage has its bands elsewhere.
    let half: Vec<[f64; 2]> = potential.iter().map(|[v, _]| [0.7 * v, 0.0]).collect();
    let other = field_picture(&outline(), &mesh, &half, &caption());
    assert_ne!(other, svg);
}

#[test]
fn a_picture_does_not_grow_with_the_mesh() {
    let size = |n: u32| {
        let (mesh, potential) = solved(n);
        field_picture(&outline(), &mesh, &potential, &caption()).len()
    };
    let (coarse, fine) = (size(10), size(150));
    assert!(fine < 2 * coarse && fine < 30_000, "{coarse}, {fine}");
}

#[test]
fn whatever_is_given_comes_out_as_svg() {
    let (mut mesh, mut potential) = solved(3);
    potential.truncate(10);
    potential[0] = [f64::NAN, f64::INFINITY];
    mesh.triangles[0][2] = u32::MAX;
    mesh.nodes[5] = Point::new(f64::NAN, 1e300);
    let mut outline = outline();
    outline.curves[0].to = 99;
    outline.points[1] = Point::new(f64::INFINITY, 0.0);
    let mut caption = caption();
    caption.marks.push(Mark {
        label: "nowhere".repeat(50),
        at: Point::new(f64::NAN, f64::NAN),
    });
    for marks in [0, 4, 500] {
        let mark = caption.marks[caption.marks.len() - 1].clone();
        caption.marks.resize(marks, mark);
        let svg = field_picture(&outline, &mesh, &potential, &caption);
        assert!(svg.starts_with("<svg ") && svg.ends_with("</svg>\n"));
        assert!(!svg.contains("NaN") && !svg.contains("inf"), "{svg}");
        if marks == 0 {
            break;
        }
    }
    let empty = field_picture(&Outline::default(), &mesh, &potential, &Caption::default());
    assert!(empty.ends_with("</svg>\n"));
}

#[test]
fn complex_amplitudes_are_drawn_by_their_modulus() {
    let (mesh, potential) = solved(10);
    let turned: Vec<[f64; 2]> = potential.iter().map(|[v, _]| [0.6 * v, -0.8 * v]).collect();
    let svg = field_picture(&outline(), &mesh, &turned, &caption());
    assert!(svg.contains(
        "Lines: modulus of the potential in tenths, from 0 % at 0 kV to 100 % at 10.0 kV"
    ));
    let real = field_picture(&outline(), &mesh, &potential, &caption());
    let fills = |svg: &str| -> Vec<String> {
        svg.lines()
            .filter(|l| l.starts_with("<path fill=\"#"))
            .map(str::to_owned)
            .collect()
    };
    assert_eq!(fills(&svg).len(), fills(&real).len());
}
