//! Against exact results: published constants and closed forms.

mod units;
