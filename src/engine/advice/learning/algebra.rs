//! The little algebra and statistics of a fit of a few quantities.

use crate::quantity::Bounded;

/// Fewest degrees of freedom that are reckoned with.
const FREEDOM_LEAST: f64 = 2.0;

/// Share of the greatest eigenvalue below which one counts as this: the data say nothing along it.
const EIGENVALUE_LEAST: f64 = 1.0e-9;

/// Solves a symmetric positive system (Cholesky); what cannot be solved is not moved.
pub(super) fn solve(matrix: &[Vec<f64>], right: &[f64]) -> Vec<f64> {
    let size = right.len();
    let mut factor = vec![vec![0.0; size]; size];
    for row in 0..size {
        for column in 0..=row {
            let known: f64 = (0..column)
                .map(|inner| factor[row][inner] * factor[column][inner])
                .sum();
            let rest = matrix[row][column] - known;
            factor[row][column] = if row == column {
                rest.at_least(f64::MIN_POSITIVE.sqrt()).sqrt()
            } else {
                rest / factor[column][column]
            };
        }
    }
    let mut found = right.to_vec();
    for row in 0..size {
        let known: f64 = (0..row)
            .map(|inner| factor[row][inner] * found[inner])
            .sum();
        found[row] = (found[row] - known) / factor[row][row];
    }
    for row in (0..size).rev() {
        let known: f64 = (row + 1..size)
            .map(|inner| factor[inner][row] * found[inner])
            .sum();
        found[row] = (found[row] - known) / factor[row][row];
    }
    found
}

/// Inverse of JᵀJ, and the ratio of the least to the greatest singular value of J with its columns scaled to one. Directions of
/// which the data say nothing get a very large variance instead of an infinite one.
pub(super) fn scaled_inverse(normal: &[Vec<f64>]) -> (Vec<Vec<f64>>, f64) {
    let size = normal.len();
    let tiny = f64::MIN_POSITIVE.sqrt();
    let greatest = (0..size)
        .map(|index| normal[index][index])
        .fold(tiny, f64::max);
    let scale: Vec<f64> = (0..size)
        .map(|index| {
            normal[index][index]
                .at_least(EIGENVALUE_LEAST * greatest)
                .sqrt()
        })
        .collect();
    let mut matrix: Vec<Vec<f64>> = (0..size)
        .map(|one| {
            (0..size)
                .map(|other| normal[one][other] / (scale[one] * scale[other]))
                .collect()
        })
        .collect();
    let vectors = diagonalise(&mut matrix);
    let eigenvalue = |index: usize| matrix[index][index].max(EIGENVALUE_LEAST);
    let ends = (0..size)
        .map(eigenvalue)
        .fold((f64::INFINITY, 0.0_f64), |(least, most), value| {
            (least.at_most(value), most.at_least(value))
        });
    let entry = |one: usize, other: usize| -> f64 {
        let sum: f64 = (0..size)
            .map(|index| vectors[one][index] * vectors[other][index] / eigenvalue(index))
            .sum();
        sum / (scale[one] * scale[other])
    };
    let inverse = (0..size)
        .map(|one| (0..size).map(|other| entry(one, other)).collect())
        .collect();
    (inverse, (ends.0 / ends.1).sqrt())
}

/// Makes a symmetric matrix diagonal by Jacobi's rotations; gives the eigenvectors as columns (Golub & Van Loan, Matrix
/// Computations, 8.5).
fn diagonalise(matrix: &mut [Vec<f64>]) -> Vec<Vec<f64>> {
    const SWEEPS: usize = 30;
    let size = matrix.len();
    let mut vectors: Vec<Vec<f64>> = (0..size)
        .map(|row| {
            (0..size)
                .map(|column| f64::from(u8::from(row == column)))
                .collect()
        })
        .collect();
    let pairs: Vec<(usize, usize)> = (0..size)
        .flat_map(|one| (one + 1..size).map(move |other| (one, other)))
        .collect();
    for (one, other) in pairs.iter().copied().cycle().take(SWEEPS * pairs.len()) {
        let off = matrix[one][other];
        if off == 0.0 {
            continue;
        }
        let tau = (matrix[other][other] - matrix[one][one]) / (2.0 * off);
        let tangent = tau.signum() / (tau.abs() + (1.0 + tau * tau).sqrt());
        let cosine = 1.0 / (1.0 + tangent * tangent).sqrt();
        let sine = tangent * cosine;
        for row in matrix.iter_mut() {
            let (a, b) = (row[one], row[other]);
            (row[one], row[other]) = (cosine * a - sine * b, sine * a + cosine * b);
        }
        let (before, behind) = matrix.split_at_mut(other);
        for (first, second) in before[one].iter_mut().zip(&mut behind[0]) {
            let (a, b) = (*first, *second);
            (*first, *second) = (cosine * a - sine * b, sine * a + cosine * b);
        }
        for row in &mut vectors {
            let (a, b) = (row[one], row[other]);
            (row[one], row[other]) = (cosine * a - sine * b, sine * a + cosine * b);
        }
    }
    vectors
}

/// Quantile of Student's distribution for 95 % of a number of degrees of freedom: few independent residuals tell little of their
/// own spread (GUM, JCGM 100:2008, G.3.2). Cornish & Fisher's expansion about the normal quantile (Abramowitz & Stegun 26.7.5), five
/// hundredths low at three degrees and less beyond.
pub(super) fn coverage(freedom: f64) -> f64 {
    const NORMAL: f64 = 1.959_964;
    let freedom = freedom.at_least(FREEDOM_LEAST);
    let square = NORMAL * NORMAL;
    let first = NORMAL * (square + 1.0) / 4.0;
    let second = NORMAL * ((5.0 * square + 16.0) * square + 3.0) / 96.0;
    let third = NORMAL * (((3.0 * square + 19.0) * square + 17.0) * square - 15.0) / 384.0;
    NORMAL + ((third / freedom + second) / freedom + first) / freedom
}

/// Correlation of each residual with the next, 0…0.99; opposite ones count as none, which is on the safe side.
pub(super) fn autocorrelation(residuals: &[f64]) -> f64 {
    let sum: f64 = residuals.iter().map(|residual| residual * residual).sum();
    if sum <= 0.0 {
        return 0.0;
    }
    let next: f64 = residuals.windows(2).map(|pair| pair[0] * pair[1]).sum();
    (next / sum).clamp(0.0, 0.99)
}
