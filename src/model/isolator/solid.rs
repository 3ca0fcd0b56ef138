//! Kind `solid`: a metal puck or stack in place of rubber, as rates or from its shape.
