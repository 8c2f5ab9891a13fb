//! The triangle of a least-squares problem: rows are taken one at a time, each eliminated by Householder reflections, so
//! that nothing but the triangle is kept however many points there are.
//!
//! Source: Lawson and Hanson, Solving Least Squares Problems, chapter 27 (sequential accumulation); a reflection of two rows
//! is [[c, s], [s, -c]]. All is done with twice the digits: a triangle of rows that are nearly dependent keeps those of its
//! input.

use crate::number::Real;
use crate::number::pair::Pair;

/// A diagonal element below so many units of the last digit of its column is nothing but rounding.
const DEPENDENT: f64 = 4.0;

/// Upper triangle, what stands on the right of it for each of `K` right-hand sides, and what is left over of each.
#[derive(Clone, Copy, Debug)]
pub(super) struct Triangle<R, const P: usize, const K: usize> {
    rows: [[Pair<R>; P]; P],
    right: [[Pair<R>; K]; P],
    /// The sum of squares that no parameter explains.
    left_over: [Pair<R>; K],
}

impl<R: Real, const P: usize, const K: usize> Triangle<R, P, K> {
    pub(super) fn new() -> Self {
        Triangle { rows: [[Pair::ZERO; P]; P], right: [[Pair::ZERO; K]; P], left_over: [Pair::ZERO; K] }
    }

    /// Takes one more row and its right-hand sides.
    pub(super) fn take(&mut self, mut row: [Pair<R>; P], mut right: [Pair<R>; K]) {
        for (at, (mine, mine_right)) in self.rows.iter_mut().zip(&mut self.right).enumerate() {
            let columns = mine.iter_mut().zip(&mut row).skip(at);
            reflect(columns, mine_right.iter_mut().zip(&mut right));
        }
        for (sum, rest) in self.left_over.iter_mut().zip(right) {
            *sum = *sum + rest.squared();
        }
    }

    /// A row with this number at one place and nothing elsewhere, without right-hand sides.
    pub(super) fn take_unit(&mut self, place: usize, number: R) {
        let mut row = [Pair::ZERO; P];
        for (_, element) in row.iter_mut().enumerate().filter(|(at, _)| *at == place) {
            *element = Pair::of(number);
        }
        self.take(row, [Pair::ZERO; K]);
    }

    /// The triangle where some of the parameters are held: their columns count for nothing.
    pub(super) fn holding(&self, held: [bool; P]) -> Self {
        let mut free = Triangle { left_over: self.left_over, ..Triangle::new() };
        for (row, right) in self.rows.iter().zip(self.right) {
            let mut row = *row;
            for (element, _) in row.iter_mut().zip(held).filter(|(_, held)| *held) {
                *element = Pair::ZERO;
            }
            free.take(row, right);
        }
        for (place, _) in held.into_iter().enumerate().filter(|(_, held)| *held) {
            free.take_unit(place, R::ONE);
        }
        free
    }

    /// The first parameter whose column is a combination of those before it, as far as the digits tell.
    pub(super) fn first_dependent(&self) -> Option<usize> {
        let least = R::lit(DEPENDENT) * R::SPACING_AT_ONE;
        let dependent =
            |at: usize, row: &[Pair<R>; P], length: R| row.get(at).is_none_or(|own| own.value() <= least * length);
        let columns = self.rows.iter().zip(self.column_lengths()).enumerate();
        columns.filter(|(at, (row, length))| dependent(*at, row, *length)).map(|(at, _)| at).next()
    }

    /// The lengths of the columns.
    pub(super) fn column_lengths(&self) -> [R; P] {
        let mut squares = [Pair::ZERO; P];
        for row in &self.rows {
            for (sum, element) in squares.iter_mut().zip(row) {
                *sum = *sum + element.squared();
            }
        }
        squares.map(|square| square.square_root().value())
    }

    /// What of the part of the residuals that parameters explain is left after this step, as a sum of squares.
    pub(super) fn missed(&self, step: [Pair<R>; P]) -> Pair<R> {
        let explained = self.rows.map(|row| dot(row.iter().zip(&step)));
        let rest = self.side(0).into_iter().zip(explained).map(|(wanted, explained)| (wanted - explained).squared());
        rest.fold(Pair::ZERO, |sum, x| sum + x)
    }

    /// The sum of squares of one right-hand side that the parameters explain.
    pub(super) fn explained(&self, side: usize) -> Pair<R> {
        self.side(side).into_iter().fold(Pair::ZERO, |sum, x| sum + x.squared())
    }

    /// The sum of squares of one right-hand side that is left over.
    pub(super) fn left_over(&self, side: usize) -> Pair<R> {
        self.left_over.get(side).copied().unwrap_or(Pair::ZERO)
    }

    /// One right-hand side.
    pub(super) fn side(&self, side: usize) -> [Pair<R>; P] {
        self.right.map(|right| right.get(side).copied().unwrap_or(Pair::ZERO))
    }

    /// The transposed triangle times a vector.
    pub(super) fn transposed_times(&self, vector: [Pair<R>; P]) -> [Pair<R>; P] {
        let mut product = [Pair::ZERO; P];
        for (row, x) in self.rows.iter().zip(vector) {
            for (sum, element) in product.iter_mut().zip(row) {
                *sum = *sum + *element * x;
            }
        }
        product
    }

    /// The vector that the triangle turns into this one. Finite if no column is dependent.
    pub(super) fn solve(&self, wanted: [Pair<R>; P]) -> [Pair<R>; P] {
        let mut solution = [Pair::ZERO; P];
        // By index: a reversed count of pairs has a path to a panic when compiled for size.
        for at in (0..P).rev() {
            let (Some(row), Some(wanted)) = (self.rows.get(at), wanted.get(at)) else { continue };
            let known = dot(row.iter().zip(&solution).skip(at + 1));
            put(&mut solution, at, (*wanted - known) / own(row, at));
        }
        solution
    }

    /// The vector that the transposed triangle turns into this one.
    pub(super) fn solve_transposed(&self, wanted: [Pair<R>; P]) -> [Pair<R>; P] {
        let mut rest = wanted;
        let mut solution = [Pair::ZERO; P];
        for (at, row) in self.rows.iter().enumerate() {
            let x = rest.get(at).copied().unwrap_or(Pair::ZERO) / own(row, at);
            for (rest, element) in rest.iter_mut().zip(row).skip(at + 1) {
                *rest = *rest - *element * x;
            }
            put(&mut solution, at, x);
        }
        solution
    }

    /// A column of its inverse.
    pub(super) fn inverse_column(&self, column: usize) -> [Pair<R>; P] {
        let mut unit = [Pair::ZERO; P];
        put(&mut unit, column, Pair::ONE);
        self.solve(unit)
    }
}

/// Reflects two rows so that the first element of the second vanishes.
fn reflect<'a, R: Real>(
    mut columns: impl Iterator<Item = (&'a mut Pair<R>, &'a mut Pair<R>)>,
    sides: impl Iterator<Item = (&'a mut Pair<R>, &'a mut Pair<R>)>,
) {
    let Some((own, other)) = columns.next() else { return };
    if other.value() == R::ZERO {
        return;
    }
    let length = (own.squared() + other.squared()).square_root();
    let (c, s) = (*own / length, *other / length);
    (*own, *other) = (length, Pair::ZERO);
    for (own, other) in columns.chain(sides) {
        (*own, *other) = (c * *own + s * *other, s * *own - c * *other);
    }
}

fn dot<'a, R: Real>(terms: impl Iterator<Item = (&'a Pair<R>, &'a Pair<R>)>) -> Pair<R> {
    terms.fold(Pair::ZERO, |sum, (a, b)| sum + *a * *b)
}

/// The element of a row on the diagonal.
fn own<R: Real, const P: usize>(row: &[Pair<R>; P], at: usize) -> Pair<R> {
    row.get(at).copied().unwrap_or(Pair::ONE)
}

fn put<R: Real, const P: usize>(vector: &mut [Pair<R>; P], at: usize, x: Pair<R>) {
    if let Some(element) = vector.get_mut(at) {
        *element = x;
    }
}
