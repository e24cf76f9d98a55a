//! The public interface of the numerics: one folder for each module, in one program so that it is linked once.

mod case;
mod chain;
mod field;
mod ladder;
mod outline;
mod rating;
mod rubber;
mod sections;
