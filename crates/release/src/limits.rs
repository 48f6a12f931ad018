//! Every limit that a verdict uses, as data with its source.
