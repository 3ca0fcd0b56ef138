//! One file per published source, one function per example.

mod american_rails;
mod barton_fieldhouse_2018;
mod dehaeze_2021;
mod en_1993_joints;
mod himelblau_rubin_2002;
mod irvine_avionics;
mod lindley;
mod racca_timpner;
mod rao_2004;
mod shigley_plates_and_welds;
mod tamboli_prying;
