//! Every kind of problem has a code, whether the file shows it (M) or the solution (S); its entry here is the manual that `bedplate explain` prints.

/// Declares the codes: identifier, number, title, manual.
macro_rules! codes {
    ($($(#[doc = $doc:literal])+ $name:ident = $id:literal, $title:literal;)+) => {
        /// Code of a problem.
        ///
        /// `M0..`: the model file cannot be used. `M1..`: it can, but look at it.
        /// `S0..`: the file is in order, but the build in it has no position at rest.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Code {
            $($(#[doc = $doc])+ $name,)+
        }

        impl Code {
            /// All codes, in order.
            pub const ALL: &'static [Self] = &[$(Self::$name,)+];

            /// Letter and three digits, such as `M014`.
            #[must_use]
            pub fn id(self) -> &'static str {
                match self { $(Self::$name => $id,)+ }
            }

            /// A few words.
            #[must_use]
            pub fn title(self) -> &'static str {
                match self { $(Self::$name => $title,)+ }
            }

            /// The manual: what it means, why it matters, how to mend it.
            #[must_use]
            pub fn manual(self) -> &'static str {
                match self { $(Self::$name => concat!($($doc, "\n",)+),)+ }
            }
        }
    };
}

codes! {
    /// The file holds bytes that are not UTF-8 text. Model files are plain text;
    /// a file saved by a word processor or in an old national encoding has to be
    /// saved again as UTF-8.
    NotText = "M001", "the file is not UTF-8 text";
    /// The file is larger than any build needs. A model file is a few kilobytes
    /// of text; scans, pictures and recordings stay in files of their own.
    TooLarge = "M002", "the file is too large";
    /// The text is not valid TOML: a missing quote, a bracket that is not
    /// closed, a key written twice. All such places are shown; what they mean
    /// can only be judged when the text can be read.
    Syntax = "M003", "the text is not valid TOML";
    /// A key or a section is not one the program knows. Nothing is ignored in
    /// silence, since a misspelt key would leave a default in its place. Look at
    /// the suggestion, or take the key out.
    UnknownKey = "M004", "unknown key";
    /// A key that cannot be guessed is missing. The message says what it is for.
    MissingKey = "M005", "missing key";
    /// The value is of another kind than the key needs: text instead of a
    /// number, a table instead of a list.
    WrongKind = "M006", "wrong kind of value";
    /// A number without a unit stands where a unit is needed. Units are never
    /// guessed: write the number and its unit as one text, such as "12 mm".
    BareNumber = "M007", "a number without its unit";
    /// The text is not a number with a unit, or not as many numbers as the key
    /// needs. Write "12 mm", or "-150, 5, 180 mm" for three numbers with one
    /// unit at the end; a decimal point, not a comma.
    NotAQuantity = "M008", "not a number with a unit";
    /// The unit is not one the program knows. `bedplate units` lists them all.
    UnknownUnit = "M009", "unknown unit";
    /// The unit belongs to another quantity than the key needs, such as a
    /// length where a force is expected.
    WrongUnit = "M010", "unit of another quantity";
    /// The number is not possible for this key: a mass that is not above zero,
    /// a negative rate, a share above one, or a number beyond any build.
    OutOfRange = "M011", "number out of range";
    /// The word is not one of those that the key allows. The message lists them,
    /// or says which was probably meant. Rubbers have plain names, not their
    /// abbreviations: "natural" (NR), "nitrile" (NBR), "chloroprene" (CR),
    /// "styrene-butadiene" (SBR), "epdm", "butyl", "silicone"; polyurethane is a
    /// kind of isolator. `tension` is "allowed", "avoid" or "none".
    UnknownWord = "M012", "unknown word";
    /// A name refers to something that the file does not hold: an isolator, a
    /// mount, a part, a point, a gear, a rail, a material. Names are compared
    /// letter by letter.
    UnknownName = "M013", "unknown name";
    /// An isolator kind is not one the program knows. They are named by what is
    /// known of the part: "rates", three known rates; "block", rubber between
    /// plates, and "bush", rubber between two tubes, both by size and hardness;
    /// "curve", measured force against deflection; "rod", a torque rod between two
    /// eyes; "hydraulic", rubber with fluid inside; "polyurethane", by size and
    /// hardness; "solid", metal on metal.
    UnknownIsolatorKind = "M014", "unknown isolator kind";
    /// Two things of one sort have the same name, so a reference to it would
    /// mean either. Rename one.
    DuplicateName = "M015", "duplicate name";
    /// A name is empty, longer than 100 characters, holds a line end, starts or
    /// ends with a space, or has a meaning of its own in the program: "at rest"
    /// is the load case that every build has, and only "reverse" is the reverse
    /// gear.
    BadName = "M016", "name cannot be used";
    /// A direction has no length, or the `u` of a mount lies along its `w`, so
    /// that no axes follow from them.
    NoDirection = "M017", "direction without a direction";
    /// No body has this inertia. The principal moments of inertia must all be
    /// above zero, and none may be larger than the sum of the other two, since
    /// J1 + J2 - J3 is twice the integral of a square. The usual causes: a
    /// product of inertia in the other sign convention, a tensor about another
    /// point than the centre of gravity, mixed units (kg mm2 against kg m2).
    ImpossibleInertia = "M018", "impossible inertia";
    /// Two keys say the same thing in two ways, or one of them leaves the other
    /// without a meaning; keep one of them. In a joint also what cannot be made:
    /// a weld to a rail that must not be welded, two joints for one mount.
    Conflict = "M019", "keys that exclude each other";
    /// The key needs another section or key to mean anything: a gear a
    /// `[driveline]`, `inclined` pieces a `count` of two or more, the `far_bush` of
    /// a rod its `bush`, a `temperature` a rubber whose rate in the heat is known.
    /// Give what is named, or take the key out.
    NeedsOther = "M020", "key that needs another one";
    /// A travel, band or size is inside out: its lower end is above its upper
    /// end, a tube is wider inside than outside, a stop lies on the wrong side
    /// of the free position.
    InsideOut = "M021", "ends in the wrong order";
    /// There is nothing to support, nothing to support it on, or more of
    /// something than the program takes.
    WrongNumberOfItems = "M022", "too few or too many items";
    /// A load case takes away every part or every mount, or the part at which one
    /// of its forces acts.
    NothingLeft = "M023", "nothing left in the load case";
    /// The list of problems was cut, since it is longer than anyone reads. Mend
    /// what is listed and read the file again; often one slip near the top is
    /// the cause of many.
    TooManyProblems = "M024", "more problems than are listed";
    /// A measured curve of force against deflection is one no isolator has, or
    /// cannot be read in one way only. Its points are in order of deflection,
    /// each deflection once; the force never falls as the deflection rises; it
    /// goes through the free position, `["0 mm", "0 N"]`. Write the loading
    /// branch alone, after the part has been worked in. Where a real part gives
    /// way, as a buckling boot does, its curve ends before.
    ImpossibleCurve = "M025", "impossible curve";
    /// The inertia is possible but belongs to a body as flat as a sheet
    /// (J1 + J2 within 2 % of J3; common practice). Check the sign convention of
    /// the products and the point that the tensor is about.
    SheetLike = "M101", "inertia of a flat sheet";
    /// Something is described but nothing uses it: an isolator without a mount, a
    /// rail without a joint, a material that nothing is made of.
    Unused = "M102", "described, but not used";
    /// A limit of an isolator is larger than the free travel to its stop on
    /// either side, so that the stop takes over before the limit is reached and
    /// the limit tells little; or its stiffening begins behind its stop. One of
    /// the two numbers may be wrong.
    LimitBeyondStop = "M103", "limit or stiffening beyond the stops";
    /// The gap to keep is larger than the gap that is there before anything
    /// moves, so that the check fails unless the powertrain moves away from the
    /// obstacle. When no `keep` is written, 15 mm is kept (common practice).
    GapBelowKeep = "M104", "gap smaller than what is to be kept";
    /// The output is a propshaft, but the crank, along which it is taken to
    /// turn, lies across the vehicle. A transverse powertrain with its final
    /// drive inside has `output = "axle-shafts"`; a gearbox that turns the
    /// corner needs its `output_direction`.
    PropshaftAcross = "M105", "propshaft across the vehicle";
    /// The ratio of dynamic to static rate and the loss factor of an isolator
    /// cannot both be true. Rubber that stiffens with speed also loses energy:
    /// twice the static rate three decades up in frequency goes with a loss
    /// factor near 0.16.
    UnlikelyLoss = "M106", "loss factor that does not go with the stiffening";
    /// The moduli of an isolator are not those of its material. Rubber springs
    /// have a shear modulus from 0.2 to 2.5 MPa and a Young's modulus of three
    /// times that without filler, about four times with it. Usual causes: N for
    /// kN, psi for MPa, a rate divided by the area of one piece of two, or a
    /// compressed block taken for one in shear. No body has a shear modulus above
    /// half of its Young's modulus. The table by which moduli follow from a hardness
    /// is that of natural rubber alone. A metal puck has tens of GPa, a hard plastic
    /// one to five: below that MPa stand for GPa.
    UnlikelyModulus = "M107", "modulus that the material has not";
    /// A stop is met, or stiffening begins, only where the rubber is pressed by 80 %
    /// of its thickness or more: nothing is known of rubber there, and long before
    /// that it is spoilt. The free travel is counted from the free position; the
    /// thickness is that of the rubber alone, of a bush that of its wall.
    BeyondRubber = "M108", "stop beyond the rubber";
    /// A block is more than twice as tall as it is wide. Under a load along its
    /// axis it leans over or buckles before the rates of its formula mean anything;
    /// up to a quarter of its least width it surely stands (Lindley). Make it
    /// lower or wider, lay several side by side, or guide it.
    TallRubber = "M109", "rubber too tall to stand";
    /// Some motion of the powertrain meets no resistance, so it has no position
    /// to rest in. The message names the motions. Usual causes: too few mounts,
    /// mounts in one line, isolators with a rate of zero along the same
    /// direction everywhere.
    NothingHolds = "S001", "nothing holds the powertrain";
    /// No position was found in which the mounts carry the weight. Usual causes:
    /// rates far too low for the mass, a slip of unit (N/m for N/mm, kg for g),
    /// or a mount far from where it should be. The message names the mount to
    /// look at first.
    NoPosition = "S002", "no position at rest was found";
    /// There is a balance, but the slightest push makes the powertrain leave it,
    /// as a pencil on its tip. Usual causes: mounts too soft sideways for a
    /// centre of gravity far above them, or too close together.
    Unstable = "S003", "the position at rest is not stable";
    /// The numbers of the build cannot be calculated with, since some are very
    /// large or very small beside the others. Look for a wrong power of ten or a
    /// wrong unit.
    NotComputable = "S004", "the build cannot be calculated";
}

impl Code {
    /// The code of an identifier such as `M014`, in either case.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL
            .iter()
            .copied()
            .find(|code| code.id().eq_ignore_ascii_case(id.trim()))
    }
}
