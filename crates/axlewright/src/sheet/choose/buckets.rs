//! Bucket elimination (Dechter, Artificial Intelligence 113, 1999): kinds are taken out one by one, each leaving what it costs and weighs at least
//! for every choice of its neighbours.
#![expect(
    clippy::indexing_slicing,
    reason = "kinds, parts and factors are numbered by their place in their own list"
)]

use super::{Chooser, Chosen, MOST_CHOICES, MOST_ROWS};
use crate::{Result, cannot};
use std::collections::{BTreeSet, HashMap};

/// Most points that the messages of all kinds hold together.
const MOST_HELD: usize = 4 * MOST_CHOICES;

impl Chooser<'_> {
    /// Takes the kinds out one by one, the one with the fewest neighbours first.
    pub(super) fn eliminate(&self, left: &[Vec<usize>]) -> Result<Buckets> {
        let mut rest: BTreeSet<usize> = (0..self.kinds.len()).collect();
        let mut scopes: Vec<(Vec<usize>, Source)> = self
            .factors
            .iter()
            .enumerate()
            .map(|(at, factor)| (factor.kinds.clone(), Source::Factor(at)))
            .collect();
        let mut buckets: Vec<Bucket> = Vec::new();
        let mut held = 0;
        while !rest.is_empty() {
            let around = |kind: usize| -> BTreeSet<usize> {
                let of = scopes.iter().filter(|(kinds, _)| kinds.contains(&kind));
                of.flat_map(|(kinds, _)| kinds.iter().copied()).filter(|other| *other != kind).collect()
            };
            let Some(kind) = rest.iter().copied().min_by_key(|kind| (around(*kind).len(), *kind)) else {
                break;
            };
            let neighbours: Vec<usize> = around(kind).into_iter().collect();
            let bound: Vec<usize> = neighbours.iter().copied().chain([kind]).collect();
            let rows = bound.iter().try_fold(1_usize, |rows, kind| rows.checked_mul(left[*kind].len()));
            if rows.is_none_or(|rows| rows > MOST_ROWS) {
                let names: Vec<&str> = bound.iter().map(|kind| self.kinds[*kind].as_str()).collect();
                return Err(cannot!(
                    "the requirements tie more than {MOST_ROWS} combinations of {} together: shorten the list, or require more of single parts",
                    names.join(", ")
                ));
            }
            let (own, others) = scopes.into_iter().partition(|(kinds, _)| kinds.contains(&kind));
            scopes = others;
            let own: Vec<(Vec<usize>, Source)> = own;
            let mut messages: HashMap<Vec<usize>, Vec<Point>> = HashMap::new();
            let mut chosen = vec![usize::MAX; self.kinds.len()];
            self.message(kind, &neighbours, 0, left, &own, &buckets, &mut chosen, &mut messages, &mut held)?;
            rest.remove(&kind);
            scopes.push((neighbours.clone(), Source::Bucket(buckets.len())));
            buckets.push(Bucket { kind, neighbours, own, messages });
        }
        Ok(Buckets { left: left.to_vec(), buckets })
    }

    /// For every choice of the neighbours, the front of the kind and of all that was taken out behind it.
    #[allow(clippy::too_many_arguments)]
    fn message(
        &self,
        kind: usize,
        neighbours: &[usize],
        depth: usize,
        left: &[Vec<usize>],
        own: &[(Vec<usize>, Source)],
        buckets: &[Bucket],
        chosen: &mut Vec<usize>,
        messages: &mut HashMap<Vec<usize>, Vec<Point>>,
        held: &mut usize,
    ) -> Result<()> {
        if let Some(neighbour) = neighbours.get(depth) {
            for part in &left[*neighbour] {
                chosen[*neighbour] = *part;
                self.message(kind, neighbours, depth + 1, left, own, buckets, chosen, messages, held)?;
            }
            return Ok(());
        }
        let mut front = Vec::new();
        for part in &left[kind] {
            chosen[kind] = *part;
            let (cost, mass) = self.weigh(*part);
            let mut points = vec![Point { cost, mass, parts: vec![(kind, *part)] }];
            for (kinds, source) in own {
                let at: Vec<usize> = kinds.iter().map(|kind| chosen[*kind]).collect();
                match source {
                    Source::Factor(factor) if !self.factors[*factor].allowed.contains(&at) => points.clear(),
                    Source::Factor(_) => {}
                    Source::Bucket(bucket) => {
                        points = match buckets[*bucket].messages.get(&at) {
                            Some(more) => joined(&points, more)?,
                            None => Vec::new(),
                        };
                    }
                }
            }
            front.append(&mut points);
            if front.len() > 2 * MOST_CHOICES {
                front = undominated(front);
            }
        }
        let front = undominated(front);
        *held += front.len();
        if front.len() > MOST_CHOICES || *held > MOST_HELD {
            return Err(too_many());
        }
        if !front.is_empty() {
            messages.insert(neighbours.iter().map(|kind| chosen[*kind]).collect(), front);
        }
        Ok(())
    }
}

#[derive(Debug, Clone, Copy)]
enum Source {
    Factor(usize),
    Bucket(usize),
}

/// One kind, taken out.
pub(super) struct Bucket {
    kind: usize,
    neighbours: Vec<usize>,
    own: Vec<(Vec<usize>, Source)>,
    messages: HashMap<Vec<usize>, Vec<Point>>,
}

pub(super) struct Buckets {
    left: Vec<Vec<usize>>,
    buckets: Vec<Bucket>,
}

/// Cost and mass of some parts together.
#[derive(Debug, Clone)]
pub(super) struct Point {
    pub(super) cost: i128,
    pub(super) mass: i128,
    pub(super) parts: Vec<(usize, usize)>,
}

/// Every point of one front with every point of another. Refused if they are too many to compare.
fn joined(one: &[Point], two: &[Point]) -> Result<Vec<Point>> {
    let mut both: Vec<Point> = Vec::new();
    let mut kept = 0;
    if one.len().saturating_mul(two.len()) > MOST_ROWS {
        return Err(too_many());
    }
    for a in one {
        // What is both dearer and heavier goes in between, so that the points take little memory.
        if both.len() > 2 * kept + MOST_CHOICES {
            both = undominated(both);
            kept = both.len();
        }
        if kept > MOST_CHOICES {
            return Err(too_many());
        }
        both.extend(two.iter().map(|b| Point {
            cost: a.cost + b.cost,
            mass: a.mass + b.mass,
            parts: a.parts.iter().chain(&b.parts).copied().collect(),
        }));
    }
    let front = undominated(both);
    if front.len() > MOST_CHOICES { Err(too_many()) } else { Ok(front) }
}

fn too_many() -> crate::Error {
    cannot!(
        "too many combinations are neither dearer nor heavier than another: at most {MOST_ROWS} are compared at once, and {MOST_CHOICES} kept; \
         shorten the list, require more of single parts, or leave out the masses"
    )
}

/// The points to which none is both cheaper and lighter, the cheapest first.
fn undominated(mut points: Vec<Point>) -> Vec<Point> {
    points.sort_by_key(|point| (point.cost, point.mass));
    let mut least = i128::MAX;
    points.retain(|point| {
        let kept = point.mass < least;
        least = least.min(point.mass);
        kept
    });
    points
}

impl Buckets {
    /// The front of whole combinations: those of the parts that hang on nothing else, together.
    pub(super) fn whole(&self) -> Result<Vec<Point>> {
        let nothing = vec![Point { cost: 0, mass: 0, parts: vec![] }];
        let mut roots = self.buckets.iter().filter(|bucket| bucket.neighbours.is_empty());
        roots.try_fold(nothing, |front, root| match root.messages.get(&[][..]) {
            Some(more) => joined(&front, more),
            None => Ok(vec![]),
        })
    }

    /// Lists combinations within the limits of cost and mass, the kinds that were taken out last chosen first: whatever is chosen, the
    /// messages say what the rest costs and weighs at least.
    pub(super) fn list(
        &self,
        chooser: &Chooser<'_>,
        most: (i128, i128),
        limit: usize,
        chosen: &mut Chosen,
    ) -> Result<()> {
        let mut parts = vec![usize::MAX; self.left.len()];
        let mut found = Vec::new();
        let start = self.buckets.len();
        self.walk(chooser, start, &mut parts, (0, 0), most, limit.min(MOST_CHOICES), &mut found);
        if found.len() > MOST_CHOICES && limit > MOST_CHOICES {
            return Err(cannot!(
                "limit = {limit}: more than {MOST_CHOICES} combinations meet the requirements, and one choice lists at most so many: \
                 ask for at most {MOST_CHOICES}, or choose from parts of the list in turn"
            ));
        }
        chosen.more = found.len() > limit;
        found.truncate(limit);
        let all = found.iter().map(|parts| {
            let pairs: Vec<(usize, usize)> = parts.iter().copied().enumerate().collect();
            chooser.choice_of(&pairs)
        });
        chosen.feasible = all.collect();
        chosen.feasible.sort_by(|a, b| a.parts.cmp(&b.parts));
        Ok(())
    }

    #[allow(clippy::too_many_arguments)]
    fn walk(
        &self,
        chooser: &Chooser<'_>,
        from: usize,
        parts: &mut Vec<usize>,
        spent: (i128, i128),
        most: (i128, i128),
        limit: usize,
        found: &mut Vec<Vec<usize>>,
    ) {
        if found.len() > limit {
            return;
        }
        let Some(at) = from.checked_sub(1) else {
            found.push(parts.clone());
            return;
        };
        let bucket = &self.buckets[at];
        for part in &self.left[bucket.kind] {
            parts[bucket.kind] = *part;
            let (cost, mass) = chooser.weigh(*part);
            let spent = (spent.0 + cost, spent.1 + mass);
            let allowed = bucket.own.iter().all(|(kinds, source)| {
                let here: Vec<usize> = kinds.iter().map(|kind| parts[*kind]).collect();
                match source {
                    Source::Factor(factor) => chooser.factors[*factor].allowed.contains(&here),
                    Source::Bucket(bucket) => self.buckets[*bucket].messages.contains_key(&here),
                }
            });
            if !allowed {
                continue;
            }
            let least = self.least_ahead(at, parts);
            if spent.0 + least.0 <= most.0 && spent.1 + least.1 <= most.1 {
                self.walk(chooser, at, parts, spent, most, limit, found);
            }
        }
    }

    /// Least cost and mass of the kinds that are not chosen yet but whose neighbours all are.
    fn least_ahead(&self, from: usize, parts: &[usize]) -> (i128, i128) {
        let chosen: BTreeSet<usize> = self.buckets[from..].iter().map(|bucket| bucket.kind).collect();
        let mut least = (0, 0);
        for bucket in &self.buckets[..from] {
            if bucket.neighbours.iter().all(|kind| chosen.contains(kind)) {
                let at: Vec<usize> = bucket.neighbours.iter().map(|kind| parts[*kind]).collect();
                if let Some(front) = bucket.messages.get(&at) {
                    least.0 += front.first().map_or(0, |point| point.cost);
                    least.1 += front.last().map_or(0, |point| point.mass);
                }
            }
        }
        least
    }
}
