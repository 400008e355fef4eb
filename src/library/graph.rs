//! The library as a graph: which step can follow which, across the trees that visit one another.
//!
//! The only file that names petgraph. Everything here is iterative and near linear: a library may have a hundred thousand
//! steps in one chain, and petgraph's `tarjan_scc` and `is_cyclic_directed` would overflow the stack on it.

use petgraph::Direction;
use petgraph::algo::{kosaraju_scc, toposort};
use petgraph::graph::{DiGraph, NodeIndex};
use petgraph::visit::{Dfs, EdgeRef, Reversed};

use super::Library;
use super::ends::{Ends, Flow};
use super::table::Id;
use super::tree::{Edge, Kind, Step, Tree};

/// Which step can follow which, and how far each tree can get.
#[derive(Debug)]
pub struct Graph {
    /// Every way from a step to another of its tree that can be taken; a visit's, as far as its tree can end so.
    ways: DiGraph<(), (), u32>,
    /// The ways that nothing bounds, all that are written.
    unbounded: DiGraph<(), (), u32>,
    /// The trees, and the steps by which one visits another.
    visits: DiGraph<(), Id<Step>, u32>,
    /// The steps that can be reached from their own tree's start.
    from_start: Vec<bool>,
    /// The trees that a call can come to.
    entered: Vec<bool>,
    ends: Vec<Ends>,
}

impl Graph {
    /// The graph of a library.
    ///
    /// A step that is unresolved may end in anything; where one of its edges is lost, it may lead to every step of its tree.
    pub fn new(library: &Library) -> Self {
        let Flow {
            reached: from_start,
            ends,
            ..
        } = Flow::through(library);
        let mut ways = nodes(library.steps.len());
        let mut unbounded = nodes(library.steps.len());
        let mut visits = nodes(library.trees.len());
        for (index, step) in library.steps.iter().enumerate() {
            let from = NodeIndex::new(index);
            // Most steps are no visits: all their edges can be taken, and are gone through once.
            let is_visit = matches!(step.kind, Kind::Visit { .. });
            step.edges().for_each(|edge| {
                if edge.limit.is_none() {
                    unbounded.add_edge(from, node(edge.go), ());
                }
                if !is_visit {
                    ways.add_edge(from, node(edge.go), ());
                }
            });
            possible_of_visit(step, &ends).for_each(|edge| {
                ways.add_edge(from, node(edge.go), ());
            });
            let visited = match step.kind {
                Kind::Visit { tree, .. } => Some(tree),
                Kind::Unresolved { visited, .. } => visited,
                _ => None,
            };
            if let Some(tree) = visited {
                visits.add_edge(node(step.tree), node(tree), Id::new(index));
            }
        }
        let entered = entered(library, &visits, &from_start);
        Self {
            ways,
            unbounded,
            visits,
            from_start,
            entered,
            ends,
        }
    }

    /// The steps that can follow a step in its tree.
    pub fn after(&self, step: Id<Step>) -> impl Iterator<Item = Id<Step>> + '_ {
        self.ways.neighbors(node(step)).map(id)
    }

    /// The steps of its tree that a step can follow.
    pub fn before(&self, step: Id<Step>) -> impl Iterator<Item = Id<Step>> + use<'_> {
        let before = self.ways.neighbors_directed(node(step), Direction::Incoming);
        before.map(id)
    }

    /// The visits of a tree.
    pub fn visitors(&self, tree: Id<Tree>) -> impl Iterator<Item = Id<Step>> + use<'_> {
        let visits = self.visits.edges_directed(node(tree), Direction::Incoming);
        visits.map(|visit| *visit.weight())
    }

    /// How a tree can end.
    pub fn ends(&self, tree: Id<Tree>) -> &Ends {
        &self.ends[tree.index()]
    }

    /// Whether a call can come to a tree: by its complaint, as the gate, after work, as a danger, or by a visit that can be reached.
    pub fn is_entered(&self, tree: Id<Tree>) -> bool {
        self.entered[tree.index()]
    }

    /// Whether a step can be reached once its tree is entered.
    pub fn is_reached_from_start(&self, step: Id<Step>) -> bool {
        self.from_start[step.index()]
    }

    /// The steps from which one of `goals` can be reached, by position; the goals are among them.
    pub fn leading_to(&self, goals: impl IntoIterator<Item = Id<Step>>) -> Vec<bool> {
        let backwards = Reversed(&self.ways);
        let mut found = vec![false; self.ways.node_count()];
        let mut search = Dfs::empty(backwards);
        for goal in goals {
            search.move_to(node(goal));
            while let Some(step) = search.next(backwards) {
                found[step.index()] = true;
            }
        }
        found
    }

    /// For every knot of circles that no edge bounds, one shortest circle through its first step.
    pub fn endless_loops(&self) -> Vec<Vec<Id<Step>>> {
        let circles = circles(&self.unbounded);
        circles
            .into_iter()
            .map(|circle| circle.into_iter().map(|edge| id(edge.0)).collect())
            .collect()
    }

    /// The trees, each behind all that it visits; none where some visit one another in a circle.
    pub fn visited_first(&self) -> Option<Vec<Id<Tree>>> {
        let mut order = toposort(&self.visits, None).ok()?;
        order.reverse();
        Some(order.into_iter().map(id).collect())
    }

    /// For every knot of trees that visit one another in a circle, the visiting steps of a shortest circle.
    pub fn endless_visits(&self) -> Vec<Vec<Id<Step>>> {
        let circles = circles(&self.visits);
        circles
            .into_iter()
            .map(|circle| circle.into_iter().map(|edge| edge.1).collect())
            .collect()
    }
}

/// The edges of a visit that can be taken, as far as its tree can end so; none of any other step's.
fn possible_of_visit<'a>(step: &'a Step, ends: &'a [Ends]) -> impl Iterator<Item = &'a Edge> {
    let visit = match &step.kind {
        Kind::Visit {
            tree,
            returns,
            on_verdict,
        } => Some((&ends[tree.index()], returns, on_verdict)),
        _ => None,
    };
    visit.into_iter().flat_map(|(ends, returns, on_verdict)| {
        let returned = returns.iter().filter(|(outcome, _)| ends.can_return(*outcome));
        let noted = on_verdict.iter().filter(|_| ends.verdict);
        returned.map(|(_, edge)| edge).chain(noted).flat_map(Edge::chain)
    })
}

fn entered(library: &Library, visits: &DiGraph<(), Id<Step>, u32>, from_start: &[bool]) -> Vec<bool> {
    let complaints = library
        .trees
        .iter()
        .filter(|(_, tree)| tree.complaint.is_some())
        .map(|(tree, _)| tree);
    let dangers = library.dangers.iter().map(|danger| danger.tree);
    let mut waiting: Vec<Id<Tree>> = complaints
        .chain(library.standing_by_themselves())
        .chain(dangers)
        .collect();
    let mut entered = vec![false; library.trees.len()];
    while let Some(tree) = waiting.pop() {
        if !std::mem::replace(&mut entered[tree.index()], true) {
            let visits = visits
                .edges(node(tree))
                .filter(|visit| from_start[visit.weight().index()]);
            waiting.extend(visits.map(|visit| id(visit.target())));
        }
    }
    entered
}

/// For each strongly connected knot of a graph that has an edge inside, a shortest circle through its first node: each
/// node of it with the edge by which it is left.
fn circles<E: Copy>(graph: &DiGraph<(), E, u32>) -> Vec<Vec<(NodeIndex, E)>> {
    if !has_circle(graph) {
        return Vec::new();
    }
    let knots = kosaraju_scc(graph);
    let mut knot_of = vec![0; graph.node_count()];
    for (number, knot) in knots.iter().enumerate() {
        for node in knot {
            knot_of[node.index()] = number;
        }
    }
    let mut before: Vec<Option<(NodeIndex, E)>> = vec![None; graph.node_count()];
    let mut circles: Vec<_> = (knots.iter())
        .filter_map(|knot| {
            let first = knot.iter().copied().min()?;
            circle(graph, first, &knot_of, &mut before)
        })
        .collect();
    circles.sort_by_key(|circle| circle.first().map(|(node, _)| node.index()));
    circles
}

/// Whether anything is left of a graph when what nothing leads to is taken away, again and again (Kahn, 1962).
///
/// Nearly every library has no circle, and this sees it at a fraction of what it takes to find the knots.
fn has_circle<E>(graph: &DiGraph<(), E, u32>) -> bool {
    let mut leading_here = vec![0_u32; graph.node_count()];
    for edge in graph.edge_references() {
        leading_here[edge.target().index()] += 1;
    }
    let mut waiting: Vec<NodeIndex> = graph
        .node_indices()
        .filter(|node| leading_here[node.index()] == 0)
        .collect();
    let mut taken_away = 0;
    while let Some(node) = waiting.pop() {
        taken_away += 1;
        for next in graph.neighbors(node) {
            leading_here[next.index()] -= 1;
            if leading_here[next.index()] == 0 {
                waiting.push(next);
            }
        }
    }
    taken_away < graph.node_count()
}

/// The shortest circle through a node within its knot, found breadth first; `before` is shared, as knots are apart.
fn circle<E: Copy>(
    graph: &DiGraph<(), E, u32>,
    first: NodeIndex,
    knot_of: &[usize],
    before: &mut [Option<(NodeIndex, E)>],
) -> Option<Vec<(NodeIndex, E)>> {
    let mut waiting = std::collections::VecDeque::from([first]);
    while let Some(node) = waiting.pop_front() {
        for edge in graph.edges(node) {
            let next = edge.target();
            if knot_of[next.index()] != knot_of[first.index()] || before[next.index()].is_some() {
                continue;
            }
            before[next.index()] = Some((node, *edge.weight()));
            if next != first {
                waiting.push_back(next);
                continue;
            }
            let back = std::iter::successors(before[first.index()], |&(node, _)| {
                if node == first { None } else { before[node.index()] }
            });
            let mut circle: Vec<_> = back.collect();
            circle.reverse();
            return Some(circle);
        }
    }
    None
}

fn nodes<E>(count: usize) -> DiGraph<(), E, u32> {
    let mut graph = DiGraph::with_capacity(count, 2 * count);
    for _ in 0..count {
        graph.add_node(());
    }
    graph
}

fn node<T>(id: Id<T>) -> NodeIndex {
    NodeIndex::new(id.index())
}

fn id<T>(node: NodeIndex) -> Id<T> {
    Id::new(node.index())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn circles_of(count: usize, edges: &[(u32, u32)]) -> Vec<Vec<usize>> {
        let mut graph = nodes(count);
        for &(from, to) in edges {
            graph.add_edge(NodeIndex::from(from), NodeIndex::from(to), ());
        }
        let circles = circles(&graph).into_iter();
        circles
            .map(|circle| circle.into_iter().map(|(node, ())| node.index()).collect())
            .collect()
    }

    #[test]
    fn each_knot_has_one_shortest_circle() {
        let edges = [(0, 1), (1, 2), (2, 0), (1, 0), (2, 3), (3, 3), (4, 0)];
        assert_eq!(circles_of(5, &edges), [vec![0, 1], vec![3]]);
        assert!(circles_of(3, &[(0, 1), (1, 2), (0, 2)]).is_empty());
    }

    #[test]
    fn a_long_chain_does_not_exhaust_the_stack() {
        let last = 200_000;
        let mut edges: Vec<(u32, u32)> = (0..last).map(|at| (at, at + 1)).collect();
        assert!(circles_of(last as usize + 1, &edges).is_empty());
        edges.push((last, 0));
        assert_eq!(circles_of(last as usize + 1, &edges).len(), 1);
    }
}
