package schedule

import "math"

const (
	tiny     = 1e-9
	halfUnit = 0.5 // of a cost: no smaller gain is one
)

// pricing looks for the prices with which the knots of a crowd, each choosing
// for itself, owe the most in all, less what the room of the days is worth at
// those prices. No answer can cost less.
//
// The plan: known ways are mixed, in shares, so that each knot has one whole
// way, no day has more than its room, and the cost is least: a linear program,
// solved by the simplex method. Its answer sets the prices, and each knot
// looks for a way that owes less with them than its known ones. If none finds
// one the prices are right; otherwise the new ways join the known.
type pricing struct {
	c     *crowd
	ways  []way
	basis []int       // of each row: the way in the mixture, -1 for room left over
	share []float64   // of each row: how much of it
	inv   [][]float64 // the inverse of the basis
	slots []int       // of each row past those of the knots: its slot
	dual  []float64   // of each row
	enter []float64   // scratch: the column that comes in
}

// setPrices leaves in the crowd its prices, what every answer costs at least,
// the least each of the alike knots owes, and the ways known in the end. If the
// steps run out on the way the prices are a guess, and only they and the ways
// are of use.
func (c *crowd) setPrices() {
	p := &pricing{c: c}
	for n, a := range c.alike {
		p.basis = append(p.basis, n)
		p.share = append(p.share, float64(len(a.members)))
		p.inv = append(p.inv, make([]float64, len(c.alike)))
		p.inv[n][n] = 1
		p.ways = append(p.ways, a.wayOut(n))
	}
	for _, w := range c.known {
		p.add(w)
	}
	c.owes = make([]int64, len(c.alike))
	for better := true; better && c.b.steps >= 0; {
		p.optimize()
		for r, s := range p.slots {
			c.price[s] = max(0, int64(math.Round(-p.dual[len(c.alike)+r])))
		}
		better = false
		for n, a := range c.alike {
			known := int64(unreachable)
			for _, w := range p.ways {
				if w.alike == n {
					known = min(known, w.owes(c.price))
				}
			}
			w, low, ok := a.best(n, c.price, c.room, known-1)
			c.owes[n] = low
			if ok {
				p.add(w)
				better = true
			}
		}
	}
	c.bound = 0
	for n, a := range c.alike {
		c.bound += c.owes[n] * int64(len(a.members))
	}
	for _, s := range p.slots {
		c.bound -= c.price[s] * int64(c.b.room[s])
	}
	c.known = p.ways
}

// add makes a way known, and a row for each day it is the first to take.
func (p *pricing) add(w way) {
	for _, s := range w.slots {
		if p.c.row[s] > 0 || p.c.takers[s] <= p.c.b.room[s] {
			continue
		}
		row := len(p.basis)
		for r := range p.inv {
			p.inv[r] = append(p.inv[r], 0)
		}
		p.inv = append(p.inv, make([]float64, row+1))
		p.inv[row][row] = 1
		p.basis = append(p.basis, -1)
		p.share = append(p.share, float64(p.c.b.room[s]))
		p.slots = append(p.slots, s)
		p.c.row[s] = row // never 0, as the knots come first
	}
	p.ways = append(p.ways, w)
}

// optimize changes the mixture while that lowers its cost.
func (p *pricing) optimize() {
	for range 20 * len(p.basis) {
		p.setDual()
		p.c.b.steps -= 1 + len(p.basis)*len(p.basis)/1000 // a change costs about that
		in, more := p.cheaper()
		if !more || p.c.b.steps < 0 {
			return
		}
		leave, least := -1, math.Inf(1)
		for r, v := range p.enter {
			if v > tiny && p.share[r]/v < least {
				leave, least = r, p.share[r]/v
			}
		}
		if leave < 0 {
			return // only rounding can leave no row
		}
		p.swap(leave)
		p.basis[leave] = in
	}
}

// setDual gives each row the cost of one more of it in the present mixture.
func (p *pricing) setDual() {
	p.dual = append(p.dual[:0], make([]float64, len(p.basis))...)
	for r, w := range p.basis {
		if w < 0 {
			continue
		}
		cost := float64(p.ways[w].cost)
		for x, v := range p.inv[r] {
			p.dual[x] += cost * v
		}
	}
}

// cheaper finds what lowers the cost most for each share that comes in, a way
// or, as -1, room left over, and puts its column in enter.
func (p *pricing) cheaper() (in int, more bool) {
	gain, slack := -halfUnit, -1
	for n := range p.ways {
		w := &p.ways[n]
		d := float64(w.cost) - p.dual[w.alike]
		for _, s := range w.slots {
			if r := p.c.row[s]; r > 0 {
				d -= p.dual[r]
			}
		}
		if d < gain {
			in, gain, more = n, d, true
		}
	}
	for r := len(p.c.alike); r < len(p.basis); r++ {
		if d := -p.dual[r]; d < gain {
			in, slack, gain, more = -1, r, d, true
		}
	}
	if !more {
		return in, false
	}
	p.enter = p.enter[:0]
	for _, inv := range p.inv {
		v := 0.0
		if in < 0 {
			v = inv[slack]
		} else {
			v = inv[p.ways[in].alike]
			for _, s := range p.ways[in].slots {
				if x := p.c.row[s]; x > 0 {
					v += inv[x]
				}
			}
		}
		p.enter = append(p.enter, v)
	}
	return in, true
}

// swap brings the column in enter into the mixture in place of a row's.
func (p *pricing) swap(leave int) {
	own, u := p.inv[leave], p.enter[leave]
	for x := range own {
		own[x] /= u
	}
	p.share[leave] /= u
	for r, v := range p.enter {
		if r == leave || v == 0 {
			continue
		}
		for x, o := range own {
			p.inv[r][x] -= v * o
		}
		p.share[r] = max(0, p.share[r]-v*p.share[leave])
	}
}
