//! Sentences about sections.

use jointwright_joint::said::{
    Between, Contour, PlugShape, SectionAsk, SectionRow, SectionSaid, SectionShape,
};

pub(super) fn say(said: &SectionSaid) -> String {
    match said {
        SectionSaid::Shape(said) => shape(said),
        SectionSaid::Plug(said) => plug(said),
        SectionSaid::Row(said) => row(said),
        SectionSaid::Ask(said) => ask(said),
    }
}

fn contour(contour: Contour) -> &'static str {
    match contour {
        Contour::Electrode => "electrode",
        Contour::Deflector => "deflector",
        Contour::Outside => "outside",
    }
}

fn between(between: Between) -> &'static str {
    match between {
        Between::Adapter => "adapter",
        Between::SpreadsTheField => "layer that spreads the field",
    }
}

fn shape(said: &SectionShape) -> String {
    match said {
        SectionShape::CornerNotRounded {
            along_mm,
            diameter_mm,
            radius_mm,
            takes_mm,
            there_mm,
        } => format!(
            "the corner at {along_mm:.2} mm along, diameter {diameter_mm:.2} mm, cannot be rounded with {radius_mm:.2} mm: that takes {takes_mm:.2} mm of its sides, and there are {there_mm:.2} mm"
        ),
        SectionShape::RoundedAtEnd { contour: of, at_mm } => format!(
            "the {} is rounded at {at_mm:.2} mm along, where the section ends",
            contour(*of)
        ),
        SectionShape::NotReachingEnd { contour: of, at_mm } => format!(
            "the {} does not reach {at_mm:.2} mm along, where the section ends",
            contour(*of)
        ),
        SectionShape::ScreenNotInside {
            screen_mm,
            insulation_mm,
        } => format!(
            "the diameter over the conductor screen, {screen_mm:.2} mm, is not less than that over the insulation, {insulation_mm:.2} mm"
        ),
        SectionShape::NoRoomOverScreen {
            between: of,
            outside_mm,
            screen_mm,
        } => format!(
            "the outside of the {}, {outside_mm:.2} mm, leaves no room over the screen, {screen_mm:.2} mm",
            between(*of)
        ),
        SectionShape::NearJunction { electrode_mm } => format!(
            "the electrode ends at {electrode_mm:.1} mm from the junction, within two of the body's radii of its axis, where a section round an axis says nothing"
        ),
        SectionShape::InsulationShort {
            insulation_mm,
            electrode_mm,
        } => format!(
            "the insulation ends at {insulation_mm:.1} mm from the body's datum, not under the electrode, which leaves it at {electrode_mm:.1} mm"
        ),
        SectionShape::ScreenAtElectrode {
            first_mm,
            electrode_mm,
        } => format!(
            "the screen or the deflector begins at {first_mm:.1} mm from the body's datum, and the electrode ends at {electrode_mm:.1} mm"
        ),
        SectionShape::BodyShort { end_mm } => format!(
            "the body ends at {end_mm:.1} mm from its datum, less than a wall beyond the heel of its deflector or the screen edge"
        ),
        SectionShape::NoSection { flaw } => {
            format!("its dimensions do not make a section: {flaw}")
        }
    }
}

fn plug(said: &PlugShape) -> String {
    match said {
        PlugShape::Length { length } => format!("the plug is {length} long"),
        PlugShape::NotTapered { small, large } => {
            format!("the plug's small end, {small}, is not smaller than its large end, {large}")
        }
        PlugShape::StudOutside { stud, small } => {
            format!("the stud, {stud}, does not lie inside the plug's small end, {small}")
        }
        PlugShape::FilmThickness { thickness_mm } => {
            format!("the film between plug and body is {thickness_mm:.3} mm thick")
        }
        PlugShape::LiesShort {
            duty,
            over_mm,
            least_mm,
        } => format!(
            "the {} lies on the bore over {over_mm:.2} mm; less than {least_mm:.0} mm makes no section",
            duty.name()
        ),
        PlugShape::LittleBetween {
            deflector_mm,
            electrode_mm,
            least_mm,
        } => format!(
            "the deflector leaves the bore at {deflector_mm:.1} mm from the plug's large end and the electrode at {electrode_mm:.1} mm; less than {least_mm:.0} mm lies between them"
        ),
        PlugShape::BodyShort {
            end_mm,
            wall_mm,
            electrode_mm,
        } => format!(
            "the body ends at {end_mm:.1} mm from the plug's large end, less than its wall, {wall_mm:.1} mm, beyond the rounded end of the electrode at {electrode_mm:.1} mm"
        ),
        PlugShape::NothingOnBore { duty } => format!(
            "nothing of the {} lies on the bore: its rounding takes it all",
            duty.name()
        ),
    }
}

fn row(said: &SectionRow) -> String {
    match said {
        SectionRow::InsideNotKnown { part } => format!("what is inside {part} is not known"),
        SectionRow::InsideNotWhole { part } => {
            format!("what is inside {part} is not wholly known")
        }
        SectionRow::SharpInside { part } => format!("a corner inside {part} has no radius"),
        SectionRow::CornersOnBore {
            part,
            region,
            n_corners,
            diameter,
        } => format!(
            "{part}: the region {region} has {n_corners} corners on the bore diameter {diameter}; it takes two, one after the other"
        ),
        SectionRow::ServesOtherwise {
            part,
            region,
            serves_as_conductor,
            conducts,
        } => format!(
            "{part}: the region {region} {}, and its row says that it {}",
            if *serves_as_conductor {
                "serves as a conductor"
            } else {
                "insulates"
            },
            if *conducts {
                "conducts"
            } else {
                "does not conduct"
            }
        ),
        SectionRow::PlugNotKnown { part } => {
            format!("the tapered plug that {part} sits on is not known")
        }
        SectionRow::SharpAroundPlug => "a corner around the plug has no radius".to_owned(),
        SectionRow::AroundPlugNotWhole => {
            "what lies around the plug is not wholly known".to_owned()
        }
        SectionRow::CornersOnCone {
            region,
            n_corners,
            within_mm,
        } => format!(
            "the region {region} has {n_corners} corners within {within_mm:.2} mm of the plug's cone; it takes two, one after the other: one at an end of the plug, one where the region leaves the bore"
        ),
        SectionRow::Region { region } => format!("the region {region}"),
        SectionRow::BeginsOnBore { found_mm, end_mm } => format!(
            "on the bore it begins at {found_mm:.2} mm from the plug's large end; it is expected to cover the plug's end at {end_mm:.2} mm"
        ),
        SectionRow::NotReaching { end_mm } => {
            format!("it does not reach {end_mm:.1} mm, where the section ends")
        }
        SectionRow::OutsideNotReaching { begin_mm } => {
            format!("its outside does not reach {begin_mm:.1} mm, where the section begins")
        }
    }
}

fn ask(said: &SectionAsk) -> String {
    match said {
        SectionAsk::CornerRadius {
            region,
            along_mm,
            diameter_mm,
        } => format!(
            "With what radius is the corner of {region} at {along_mm:.1} mm along, diameter {diameter_mm:.1} mm, rounded?"
        ),
        SectionAsk::OnWhatDiameter { part } => {
            format!("On what diameter over insulation are the inner diameters of {part} stated?")
        }
        SectionAsk::OverEdge { part } => format!(
            "How does {part} lie over the edge of the insulation screen: between which radii is an edge cut as its paper asks, for what length before it does the body stand off, and what fills that gap for the life of the joint?"
        ),
        SectionAsk::WhereLies { part, duty } => format!(
            "Where does the {} of {part} begin and end, at which diameters, and with what radii are its corners rounded?",
            duty.name()
        ),
        SectionAsk::Permittivity { part } => {
            format!("What is the relative permittivity of the insulation of {part}?")
        }
        SectionAsk::Inside { part } => format!(
            "On a cable of what diameter, where along its axis and at what diameters lie the electrode, the deflector and the outside of {part}, and with what radii are the corners of its conducting parts rounded? Ask its maker, or cut a body of this lot open along its axis, lay a rule beside it and measure each corner twice."
        ),
        SectionAsk::EdgeRadii { part } => format!(
            "Between which radii is a screen edge cut as the paper of {part} asks, for what length before it does the body stand off the insulation, and what fills that gap for the life of the joint?"
        ),
        SectionAsk::PlugCornerRadius {
            region,
            along_mm,
            diameter_mm,
        } => format!(
            "With what radius is the corner of the region {region} at {along_mm:.1} mm from the plug's large end, diameter {diameter_mm:.1} mm, rounded?"
        ),
        SectionAsk::PlugWhereLies { duty } => format!(
            "Where does the {} around the plug begin and end, from the plug's large end, at which diameters, and with what radii are its corners rounded? {ASK_MAKER}",
            duty.name()
        ),
        SectionAsk::PlugPermittivity => {
            "What is the relative permittivity of the insulation around the plug?".to_owned()
        }
        SectionAsk::PlugSizes { part } => format!(
            "What are the diameters of both ends of the tapered plug that {part} sits on, its length, that of the stud inside it, and the relative permittivity of the plug?"
        ),
        SectionAsk::PlugFilm { part } => format!(
            "Between which thicknesses is the film that the fit leaves between the plug and {part}, and what fills it for the life of the joint?"
        ),
        SectionAsk::PlugInside { part } => format!(
            "Where, from the plug's large end, and at what diameters lie the electrode, the deflector and the outside of {part} around the plug, and with what radii are the corners of its conducting parts rounded? {ASK_MAKER}"
        ),
    }
}

const ASK_MAKER: &str = "Ask its maker, or cut a body of this lot open along the plug's axis, lay a rule beside it and measure each corner twice.";
