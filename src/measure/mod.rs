//! What a number is: units, quantities, bands, accuracy.
