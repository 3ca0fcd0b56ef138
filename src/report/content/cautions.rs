//! Section: cautions. The one place that holds their words, for the report, the terminal and the front page alike.

use super::{Block, Section};

/// The cautions in one line.
pub const IN_ONE_LINE: &str = "Estimates, no approval: lift only with rated gear, never work under a hung load, \
     and have the finished mounts judged by a licensed engineer under your local vehicle rules.";

/// One caution.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Caution {
    /// What it is about.
    pub about: &'static str,
    /// What to mind.
    pub text: &'static str,
}

/// All cautions, in the order of the work.
pub const ALL: [Caution; 6] = [
    Caution {
        about: "Lifting and supporting",
        text: "Lift an engine or gearbox only with a hoist, chains and eyes rated for more than its weight. \
               Set it and the vehicle on stands before hands go near. Never stand, reach or lie under a hung load.",
    },
    Caution {
        about: "First running",
        text: "Mounts that have not been proven can let go. Keep people out of the line of the fan, the belts and the shafts, \
               bring the load up in small steps, and look at every bolt, bracket and weld after each step.",
    },
    Caution {
        about: "Steering, brakes and fuel",
        text: "A powertrain on soft mounts moves. Leave room for that motion at the steering shaft, brake pipes, fuel lines, wiring, \
               throttle and clutch linkage in every load case, and use hoses with slack where they cross from powertrain to chassis.",
    },
    Caution {
        about: "Hot exhaust",
        text: "The exhaust moves with the engine and burns what it touches. Keep rubber, hoses, wiring and bodywork clear of it, \
               shield isolators that stand near it, and give the pipe a flexible joint.",
    },
    Caution {
        about: "What these numbers are",
        text: "Results are estimates of a rigid body on mounts from the numbers in the file. Rubber differs by 15 % and more from piece to piece, \
               with temperature and with age. Welds, brackets and frames can break where this report says nothing of them.",
    },
    Caution {
        about: "Rules",
        text: "This report is no approval. The vehicle rules of your place decide what may be changed and driven, \
               and a licensed engineer decides whether the finished work is sound.",
    },
];

/// All cautions in full.
#[must_use]
pub fn section() -> Section {
    Section {
        id: "cautions",
        heading: "Cautions",
        blocks: vec![Block::List(
            ALL.iter()
                .map(|caution| format!("{}. {}", caution.about, caution.text))
                .collect(),
        )],
    }
}
