//! The one place where text becomes SI and SI becomes text.
//!
//! Inside the library every value is in SI (m, kg, s, N, rad); outside, people write `3/8 in`,
//! `250 lb/in` or `45 N·m`. [`parse`] and [`parse_vector`] read such text when told which
//! [`Quantity`] to expect, and [`show`] writes a value back.
//!
//! What is accepted, and why:
//!
//! - The expected quantity settles a spelling with two meanings: `g` is a gram for a mass and the
//!   standard acceleration of free fall for an acceleration; `lb` is a mass, but `lb ft`, `lb/in`
//!   and `lb/in2` can only mean pounds-force and are read so. `kg/mm` is likewise `kgf/mm`.
//! - `kg m` is refused as a torque, because it also reads as a first moment of mass; `lb` and `kg`
//!   alone are refused as forces. The message proposes the form with `f`.
//! - `mil` and `ton` are refused: each names different units in different places.
//! - Symbols of the SI keep their case, because it changes the meaning (`mm` and `Mm`); trade units
//!   such as `RPM` and `LB-FT` may be in any case.
//! - A number has a decimal point, never a comma. Fractions of the workshop are read exactly:
//!   `1/4`, `1-1/2`, `1 1/2`.
//! - A temperature is kept in degrees Celsius as stated, not in kelvin: material data quote it so
//!   and only differences of it enter a calculation.
//!
//! ```
//! use bedplate::units::{Digits, Quantity, Shown, parse, parse_vector, show};
//!
//! let rate = parse("250 N/mm", Quantity::LinearRate)?;
//! assert_eq!(show(rate, Shown::NewtonPerMillimetre, Digits::Decimals(1)), "250.0 N/mm");
//! let place: [f64; 3] = parse_vector("-150, 5, 180 mm", Quantity::Length)?;
//! assert_eq!(show(place[0], Shown::Millimetre, Digits::Significant(3)), "-150 mm");
//! # Ok::<(), bedplate::units::UnitError>(())
//! ```

mod commas;
mod error;
mod factor;
mod lookup;
mod normal;
mod number;
mod parse;
mod quantity;
mod show;
mod table;

pub use error::{UnitError, UnitErrorKind};
pub use parse::{ABSOLUTE_ZERO, LARGEST, SMALLEST, parse, parse_row, parse_vector};
pub use quantity::Quantity;
pub use show::{Digits, Shown, number, show};
pub use table::UnitRow;
