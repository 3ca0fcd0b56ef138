//! One file per published source, one function per example.

mod barton_fieldhouse_2018;
mod bhandari;
mod bhavikatti;
mod dehaeze_2021;
mod hibbeler;
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
