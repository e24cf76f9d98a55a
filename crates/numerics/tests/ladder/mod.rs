//! The ladder compared with finite elements and closed forms.

mod against_elements;
mod bus_star;
mod closed_forms;
mod joints;
mod limits;
mod projected;
mod reduced;
