//! One file per published source, one function per example.

mod american_rails;
mod anodic_index;
mod balancing_exercises;
mod barton_fieldhouse_2018;
mod bhandari;
mod bhavikatti;
mod dehaeze_2021;
mod en_1993_joints;
mod hibbeler;
mod himelblau_rubin_2002;
mod irvine_avionics;
mod iso_898;
mod jindal;
mod khurmi_gupta;
mod lindley;
mod material_lists;
mod nptel_112101096;
mod plates_on_tubes;
mod racca_timpner;
mod rao_2004;
mod shigley_8;
mod shigley_9;
mod shigley_plates_and_welds;
mod tamboli_prying;
mod vdi_2230;
mod wentzell;
