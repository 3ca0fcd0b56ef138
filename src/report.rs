//! The report: what a build's evaluation says, as pages, tables and figures.

pub mod figure;
