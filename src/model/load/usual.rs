//! The usual set of load cases.
