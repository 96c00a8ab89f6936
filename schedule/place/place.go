package place

import "slices"

// Problem is the tasks that want days, and what holds between them.
type Problem struct {
	Tasks  []Task
	Limits []Limit
	PerDay int   // tasks that one person does on a day at most; 0: any number
	Bonus  int64 // what comes off the cost of a task on the day that its group shares
}

// Task is one job that wants a day.
type Task struct {
	Area     int     // tasks of one area are solved together, and so are areas that a limit ties
	Who      string  // the person who does it; PerDay counts the tasks of each
	Group    string  // tasks of one group would rather share a day; "": of no group
	Days     []int   // the days on which it may be done, ascending
	Cost     []int64 // of each of Days, 0 or more
	LeaveOut int64   // what it costs to give it no day: more than any day; all tasks together stay below 1<<60
	Fixed    bool    // stands on its one day, and only pushes the others
}

// Limit holds between two tasks that both have a day. They never share a day.
// Between two fixed tasks it says nothing.
type Limit struct {
	A, B   int // indexes of the tasks
	AThenB int // if A comes first, B comes at least this many days later
	BThenA int // if B comes first, A comes at least this many days later
	Order  int // +1: A must come first; -1: B must
}

// Answer is the days that [Place] found, and what is known of them.
type Answer struct {
	Day       []int     // of each task: an index into its Days, or Left
	Cost      int64     // the sum of costs
	Contested bool      // areas wanted the same days, and shared them the plain way
	Stopped   bool      // an area ran out of steps: its days may not be the best
	Causes    [][]Cause // of each task: what keeps it from days that cost less
	Steps     int       // the effort, counted
}

// Left stands in Answer.Day for a task without a day.
const Left = -1

// areaSteps bounds the effort for one component, counted and never timed, so that
// the answer is the same on every machine. A step is one node of a cut visited,
// one task of an order looked at or one choice made, and takes some 50
// nanoseconds at most. An ordinary area needs about 2,000, the dearest known 550,000.
const areaSteps = 1_000_000

// Place finds the days: see the package comment.
func Place(p Problem) Answer {
	return newSolver(p, areaSteps).place()
}

// place runs the steps of the package comment; at holds the day of each task. First
// every component is solved as if days held any number of tasks and no group gained.
// Then the groups get their days, and an area is solved again if that makes one of its
// tasks want another day, or if it overfills a day by itself. Last, areas that overfill
// a day together share it.
func (s *solver) place() Answer {
	at := make([]int, len(s.Tasks))
	for i := range at {
		at[i] = s.none
		if t := &s.Tasks[i]; t.Fixed && len(t.Days) > 0 {
			at[i] = t.Days[0] - s.origin
		}
	}
	for _, tasks := range s.areas {
		for _, part := range s.components(tasks) {
			s.solve(part, nil, at)
		}
	}
	gains := s.gather(at) // which tasks would gain by moving to the day of their group
	for _, tasks := range s.areas {
		if s.overfull(tasks, s.room, at) > 0 || slices.ContainsFunc(tasks, func(i int) bool { return gains[i] }) {
			s.solveIn(tasks, s.room, at)
		}
	}
	out := Answer{Day: make([]int, len(s.Tasks)), Contested: s.share(at), Stopped: s.stopped}
	out.Causes, out.Steps = s.causes(at), s.spent
	for i := range s.Tasks {
		out.Cost += s.cost(i, at[i])
		out.Day[i] = s.index(i, at[i])
	}
	return out
}
