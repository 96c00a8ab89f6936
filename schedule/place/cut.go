package place

import "slices"

// cut is the relaxation of one component: the least-cost days of its tasks when
// only some of its limits are asked for, each with the order of its two tasks
// given. That is a minimum cut.
//
// Each task is a chain of nodes, from its head to its tail. One arc for each of its
// days leads from node to node, and its capacity is what the day costs. To cut the
// arc of a day is to take that day: the nodes before it are on the side of the source,
// those behind it on the side of the sink. An arc of unlimited capacity back along each
// arc of the chain keeps a chain from being cut twice. "q at least g days after p" is,
// for each day of p, an arc of unlimited capacity from the node before that day to the
// node of q before its first day that is late enough: then no cut can have p so late and
// q earlier. Heads are sources, tails sinks.
//
// By the theorem of Ford and Fulkerson the least cut costs as much as the most flow
// carries. The flow found so far is kept: a further limit only adds arcs, so it need
// only be increased. Of equal cuts the one nearest to the source has the earliest day of
// every task at once.
//
// Inside a cut a task is named by its place in tasks.
type cut struct {
	c     *component
	tasks []int        // the place of each task in the component
	days  [][]option   // of each task: the days it may take
	start []int        // of each task: its head; and, at the end, the number of nodes
	owner []int        // of each node: its task
	left  []int64      // of each node: the capacity left on the arc of its day; 0 at a tail
	arcs  []precedence // the limits asked for
	last  []ends       // of each task: the last limits in arcs that leave or enter it
	bound []bool       // of each task: whether anything is asked of it; if not, its cheapest day is best
	cost  int64        // of the days; until the cut is solved, a lower bound
	at    []int        // of each task of the component: its day, once the cut is solved
}

// precedence is the arcs of one limit: q at least so many days after p.
type precedence struct {
	p, q int
	to   []int   // of each node of p, from its head: the node of q it leads to, or -1
	from []int   // of each node of q, from its head: the node of p that leads to it, or -1
	flow []int64 // of each node of p, from its head: the flow on its arc
	next ends    // the limits before this one in arcs that leave p and that enter q
}

// ends are places in cut.arcs: of a limit that leaves a task, and of one that enters it;
// -1 for none. With precedence.next they link all limits of a task.
type ends struct{ leave, enter int }

// unlimited is above every capacity, and itself the capacity of an arc that is never cut.
const unlimited = 2 * unreachable

// newCut sets up the relaxation of the tasks with no limit asked for: each is on its
// cheapest day. Its chain alone can carry the cost of that day, so that flow is counted
// into cost at once and taken off every capacity.
func (c *component) newCut(tasks []int, days [][]option) *cut {
	n := &cut{c: c, tasks: tasks, days: days, start: make([]int, 1, len(tasks)+1)}
	n.last, n.bound = slices.Repeat([]ends{{-1, -1}}, len(tasks)), make([]bool, len(tasks))
	nodes := len(tasks)
	for _, days := range days {
		nodes += len(days)
	}
	n.left, n.owner = make([]int64, 0, nodes), make([]int, 0, nodes)
	for p, days := range days {
		low := days[0].cost
		for _, o := range days {
			low = min(low, o.cost)
		}
		for _, o := range days {
			n.left, n.owner = append(n.left, o.cost-low), append(n.owner, p)
		}
		n.left, n.owner = append(n.left, 0), append(n.owner, p)
		n.start = append(n.start, len(n.left))
		n.cost += low
	}
	return n
}

// clone copies a cut, so that a limit asked of the copy leaves the first as it is.
func (n *cut) clone() *cut {
	m := *n
	m.left, m.arcs = slices.Clone(n.left), slices.Clone(n.arcs)
	m.last, m.bound = slices.Clone(n.last), slices.Clone(n.bound)
	for k := range m.arcs {
		m.arcs[k].flow = slices.Clone(m.arcs[k].flow)
	}
	return &m
}

// follow asks that task q come at least gap days after task p.
func (n *cut) follow(p, q, gap int) {
	a := precedence{p: p, q: q, to: make([]int, len(n.days[p])), flow: make([]int64, len(n.days[p]))}
	a.from = slices.Repeat([]int{-1}, len(n.days[q])+1)
	j := 0
	for k, o := range n.days[p] {
		a.to[k] = -1
		before := j
		for j < len(n.days[q]) && n.days[q][j].day < o.day+gap {
			j++
		}
		if j > before { // else the node before leads there already
			a.to[k], a.from[j] = n.start[q]+j, n.start[p]+k
		}
	}
	a.next = ends{n.last[p].leave, n.last[q].enter}
	n.last[p].leave, n.last[q].enter = len(n.arcs), len(n.arcs)
	n.arcs = append(n.arcs, a)
	n.bound[p], n.bound[q] = true, true
}

// bar closes a day to a task.
func (n *cut) bar(p, day int) {
	for k, o := range n.days[p] {
		if o.day == day && n.left[n.start[p]+k] < unlimited {
			n.left[n.start[p]+k] += unlimited
		}
	}
	n.bound[p] = true
}

// hold closes all days but one to a task.
func (n *cut) hold(p, day int) {
	for _, o := range n.days[p] {
		if o.day != day {
			n.bar(p, o.day)
		}
	}
}

// solve increases the flow as far as it goes, finds the days of the least cut, and tells
// whether they cost no more than most. It gives up once the flow exceeds that.
func (n *cut) solve(most int64) bool {
	f := n.c.s.newFlood(len(n.left))
	for n.cost <= most {
		tail := n.reach(f)
		if tail < 0 {
			n.at = n.read(f)
			return n.c.s.steps >= 0
		}
		n.push(f, tail)
	}
	return false
}

// read gives the days of the cut nearest to the source. On a chain of which something is
// asked, it is the day whose arc leads to the first node that no more flow could reach;
// on any other, the first day without capacity left, which is its cheapest.
func (n *cut) read(f *flood) []int {
	at := slices.Repeat([]int{n.c.s.none}, len(n.c.tasks))
	for p, days := range n.days {
		k, head := 0, n.start[p]
		for n.bound[p] && f.seen[head+k+1] == f.round || !n.bound[p] && n.left[head+k] > 0 {
			k++
		}
		at[n.tasks[p]] = days[k].day
	}
	return at
}

// flood is a breadth-first search through a network for nodes that more flow could reach.
type flood struct {
	seen  []int // of each node: the round in which it was reached
	from  []int // of each node reached: from which node
	by    []int // of each node reached: by which arc, see below
	queue []int // the nodes reached, in order
	round int   // counts the searches, so that seen need not be cleared
}

// Arcs in flood.by: along a chain, by the arc of a day or back; else 2e by an arc of the
// limit arcs[e], and 2e+1 against one, which takes flow back.
const (
	onward = -1
	back   = -2
)

// newFlood gives a flood for so many nodes. There is one for all searches.
func (s *solver) newFlood(nodes int) *flood {
	f := &s.flood
	if len(f.seen) < nodes {
		f.seen, f.from, f.by = make([]int, nodes), make([]int, nodes), make([]int, nodes)
		f.round = 0
	}
	return f
}

// reach finds the nodes that more flow could reach from the heads, and stops at the
// first tail; -1 if it can reach none, and then the flow is at its most. Chains of which
// nothing is asked are left out, as their flow is at its most from the start.
func (n *cut) reach(f *flood) (tail int) {
	f.round++
	f.queue = f.queue[:0]
	visit := func(node, from, by int) {
		if f.seen[node] != f.round {
			f.seen[node], f.from[node], f.by[node] = f.round, from, by
			f.queue = append(f.queue, node)
		}
	}
	for p, bound := range n.bound {
		if bound {
			visit(n.start[p], -1, onward)
		}
	}
	for k := 0; k < len(f.queue); k++ {
		node := f.queue[k]
		p := n.owner[node]
		if node == n.start[p+1]-1 {
			n.c.s.spend(k)
			return node
		}
		if n.left[node] > 0 {
			visit(node+1, node, onward)
		}
		if node > n.start[p] {
			visit(node-1, node, back)
		}
		for e := n.last[p].leave; e >= 0; e = n.arcs[e].next.leave {
			if to := n.arcs[e].to[node-n.start[p]]; to >= 0 {
				visit(to, node, 2*e)
			}
		}
		for e := n.last[p].enter; e >= 0; e = n.arcs[e].next.enter {
			a := &n.arcs[e]
			if from := a.from[node-n.start[p]]; from >= 0 && a.flow[from-n.start[a.p]] > 0 {
				visit(from, node, 2*e+1)
			}
		}
	}
	n.c.s.spend(len(f.queue))
	return -1
}

// push sends as much flow to a tail as the way found by [cut.reach] has capacity for.
func (n *cut) push(f *flood, tail int) {
	most := int64(unlimited)
	for node := tail; f.from[node] >= 0; node = f.from[node] {
		from := f.from[node]
		switch by := f.by[node]; {
		case by == onward:
			most = min(most, n.left[from])
		case by >= 0 && by%2 == 1:
			a := &n.arcs[by/2]
			most = min(most, a.flow[node-n.start[a.p]])
		}
	}
	n.cost += most
	for node := tail; f.from[node] >= 0; node = f.from[node] {
		from := f.from[node]
		switch by := f.by[node]; {
		case by == onward:
			n.left[from] -= most
		case by == back:
			n.left[node] += most
		case by%2 == 0:
			a := &n.arcs[by/2]
			a.flow[from-n.start[a.p]] += most
		default:
			a := &n.arcs[by/2]
			a.flow[node-n.start[a.p]] -= most
		}
	}
}
