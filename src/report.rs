//! What people and programs read of an evaluation: terminal text, one HTML page, CSV and the results document.
//!
//! [`content`] turns a model and its evaluation into headings, sentences,
//! lines, tables and findings as data. [`text`] and [`html`] write that data
//! for people, [`csv`] writes its tables for programs. [`json`] writes the
//! evaluation itself, in SI. [`figure`] draws.
//!
//! Computes no mechanics, opens no file, prints nothing.

pub mod content;
pub mod csv;
pub mod figure;
pub mod html;
pub mod json;
pub mod text;

#[cfg(test)]
mod fixture;
