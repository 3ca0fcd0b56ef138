//! One file per published source, one function per example.

mod american_rails;
mod barton_fieldhouse_2018;
mod bhandari;
mod bhavikatti;
mod dehaeze_2021;
mod hibbeler;
mod en_1993_joints;
mod himelblau_rubin_2002;
mod irvine_avionics;
mod iso_898;
mod jindal;
mod lindley;
mod racca_timpner;
mod rao_2004;
mod shigley_8;
mod shigley_9;
mod vdi_2230;
mod wentzell;
mod shigley_plates_and_welds;
mod tamboli_prying;
