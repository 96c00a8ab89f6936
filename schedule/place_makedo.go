package schedule

const (
	makeDoPasses = 10
	makeDoSteps  = 3_000
)

// seat is a knot in a first answer, with its way.
type seat struct {
	alike, member int
	way           way
}

// makeDo offers a first answer that fits, not the best: the jobs in order of
// importance, each on the cheapest day still open to it. If steps allow, each
// knot then takes its best way beside the others, while that gains anything.
func (c *crowd) makeDo() {
	b := c.b
	at := make([]int, len(b.tasks))
	b.inTurn(c.tasks, at, c.room)
	var seats []seat
	for n, a := range c.alike {
		for m, tasks := range a.members {
			seats = append(seats, seat{n, m, a.wayAt(n, tasks, at)})
		}
	}
	c.improve(seats)
}

// makeDoPriced offers an answer in which each knot in turn takes the way that
// owes least beside those before it.
func (c *crowd) makeDoPriced() {
	var seats []seat
	for n, a := range c.alike {
		for m := range a.members {
			w, _, ok := a.best(n, c.price, c.room, unreachable)
			if !ok {
				w = a.wayOut(n)
			}
			c.take(w.slots)
			seats = append(seats, seat{n, m, w})
		}
	}
	c.improve(seats)
}

// improve lets each knot in turn take its best way beside the others, while
// that gains anything, and offers the outcome. The seats have taken their days.
func (c *crowd) improve(seats []seat) {
	all := c.b.steps
	c.b.steps = makeDoSteps
	for range makeDoPasses {
		gained := false
		for i := range seats {
			s := &seats[i]
			if c.b.steps < 0 {
				break
			}
			c.free(s.way.slots)
			if w, _, ok := c.alike[s.alike].best(s.alike, nil, c.room, s.way.cost-1); ok {
				s.way, gained = w, true
			}
			c.take(s.way.slots)
		}
		if !gained {
			break
		}
	}
	c.b.steps = all - makeDoSteps + c.b.steps
	days, cost := make([]int, len(c.tasks)), int64(0)
	for _, s := range seats {
		a := c.alike[s.alike]
		for p, d := range s.way.days {
			days[c.place[a.members[s.member][p]]] = d
		}
		cost += s.way.cost
		c.known = append(c.known, s.way)
		c.free(s.way.slots)
	}
	c.offer(days, cost)
}
