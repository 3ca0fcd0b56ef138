//! Section: how the numbers were computed, and from which sources.

use super::{Block, Section};

const METHOD: [&str; 13] = [
    "Mass: the parts are added by the parallel-axis theorem. A part without a stated inertia counts as the stated shape, times its fill. Derived.",
    "Position under load: the powertrain is one rigid body. Its position is found where weight, inertia forces, torque and the forces of all mounts balance, \
     with turns of any size, by Newton's method with the exact derivative of every force and a check of the forces left over. Derived.",
    "Mounts: isolator, bracket and chassis at a mount are springs in a row; one force runs through all three and their deflections add. \
     Stops act on the deflection of the isolator alone. Derived.",
    "Isolators: a block from its hardness and size by its shape factor, with the bulk of the rubber and bending in shear taken in; a bush by \
     elasticity of its rubber between two tubes; a torque rod as a link that swings; measured curves by a smooth line through the points. \
     Rates from hardness miss a real part by 15 % to 45 %: a measured rate is better. Lindley; Gent and Lindley; derived; checked against finite elements.",
    "Years and frames: the rubber creeps by a share of its deflection at rest, and the powertrain is rested again on what that leaves. \
     The chassis is raised at one mount after the other and the powertrain rested again. Derived; the amounts are common practice.",
    "Torque: the mounts hold the torque that leaves the powertrain less the torque that enters it. A case limited by grip is capped \
     at what the driven tyres can hold with the weight that lies on them in that case. Derived; shock factors and usual cases are common practice.",
    "Natural frequencies: small swings about the loaded position, with the dynamic rate of the rubber and with the effect of the weight on tilted mounts. \
     Damping comes from the loss factor of the rubber by way of the energy lost in a cycle. Theory: Himelblau and Rubin.",
    "Torque roll axis: the direction in which the free powertrain starts to turn when torque acts about the crank. Derived from the inertia tensor.",
    "Elastic axes: the lines along which a force moves the powertrain without turning it, in the three principal directions of the stiffness of all mounts together. \
     The stiffness centre is their mean, weighted with stiffness; it is an elastic centre where they meet. Derived.",
    "Bolts: torque and preload from friction in thread and under the head as a range, losses by settling and heat, share of a pull \
     that the bolt feels, yield, slip, wear, threads in tapped parts as in VDI 2230-1. The reaction of the mount is carried to the \
     middle of the joint face and shared by the bolts as by a stiff foot, about the middle of the pattern and about the edge it tips on; the worse counts.",
    "Rails: the clamp force squeezes a hollow rail as a plane frame or ring whose length was fitted to shell calculations; a sleeve takes \
     what is left once its gap has closed. Folding, punching and side walls, round tubes under plates, bolts in holes, welds: Eurocode 3 and 9. Derived where the source is not named.",
    "Feet and plates: bending at the upright, prying by Thornton's method, what holes leave. Metals: anodic indices and ratio of areas, a first look and no rate of corrosion.",
    "Scatter: each isolator's rate may lie anywhere in its stated band. A check is called close when its margin lies inside what that band moves. Common practice.",
];

const SOURCES: [&str; 9] = [
    "H. Himelblau, S. Rubin, Vibration of a resiliently supported rigid body, chapter 3 of C. M. Harris, A. G. Piersol (editors), \
     Harris' Shock and Vibration Handbook, 5th edition, McGraw-Hill, 2002.",
    "P. B. Lindley, Engineering Design with Natural Rubber, NR Technical Bulletin, Malaysian Rubber Producers' Research Association: \
     moduli by hardness, shape factor, bulk and large strain.",
    "A. N. Gent, P. B. Lindley, The compression of bonded rubber blocks, Proceedings of the Institution of Mechanical Engineers 173 (1959) 111-122.",
    "VDI 2230-1:2003, Systematic calculation of highly stressed bolted joints; ISO 898-1, ISO 3506-1, SAE J429: bolts and their classes. From memory of these, \
     checked against published worked examples.",
    "EN 1993-1-8:2005, EN 1993-1-1:2005, EN 1999-1-1:2007: bolts, holes, hollow sections, welds, metal beside a weld. From memory but for table 3.2b of the last.",
    "R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th edition, 2011; W. A. Thornton, Prying action, a general treatment, \
     AISC Engineering Journal 22 (1985); MIL-STD-889, Dissimilar metals (from memory).",
    "ISO 8855, Road vehicles: vehicle dynamics and road-holding ability, vocabulary: x forward, y left, z up.",
    "BIPM, The International System of Units, 9th edition, 2019: units and standard gravity.",
    "Limits without a source are common practice of the trade, said so beside each, and replaced by a value of your own in the file.",
];

const NOT_COVERED: &str = "Not covered: bending of the powertrain and of the frame beyond the stated stiffness at the mounts, \
     fatigue of brackets, rails and welds, oil, wear, and shaking with time: only held loads and natural frequencies are computed.";

/// Method, sources and what is left out.
#[must_use]
pub fn section() -> Section {
    let list = |items: &[&str]| Block::List(items.iter().map(|&item| item.to_owned()).collect());
    Section {
        id: "method",
        heading: "Method and sources",
        blocks: vec![
            list(&METHOD),
            Block::paragraph(NOT_COVERED),
            Block::Heading("Sources".to_owned()),
            list(&SOURCES),
        ],
    }
}
