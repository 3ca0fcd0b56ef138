//! One file per published source, one function per example.

mod anodic_index;
mod barton_fieldhouse_2018;
mod dehaeze_2021;
mod himelblau_rubin_2002;
mod irvine_avionics;
mod iso_898;
mod lindley;
mod material_lists;
mod racca_timpner;
mod rao_2004;
