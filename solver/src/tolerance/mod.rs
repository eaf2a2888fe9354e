//! x
mod chance;
mod normal;
mod quadrature;
