//! What must hold for every model.

mod model_file;
