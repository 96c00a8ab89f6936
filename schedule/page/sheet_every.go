package page

import "slices"

// everyView is what holds for several jobs and is printed once.
type everyView struct {
	Heading string
	Rain    string
	Items   []string
}

// lift takes out of jobs what all that spread something have in common, and
// the cautions that all with the same material have, so that it is printed once
// and read. Steps and what to do if it rains stay with a job unless every job
// has them; rain false leaves the rain with each job in any case.
func lift(jobs []jobView, rain bool) ([]everyView, []jobView) {
	jobs = slices.Clone(jobs)
	var out []everyView
	add := func(heading string, whole bool, among func(jobView) bool) {
		if e := liftFrom(jobs, among, whole, rain && whole); e.Rain != "" || len(e.Items) > 0 {
			e.Heading = heading
			out = append(out, e)
		}
	}
	add("Each time something is spread", true, func(j jobView) bool { return j.spreads })
	var done []string
	for _, j := range jobs {
		if j.spreads && !slices.Contains(done, j.material) {
			done = append(done, j.material)
			add("Each time with "+j.material, false, func(o jobView) bool { return o.spreads && o.material == j.material })
		}
	}
	return out, jobs
}

// liftFrom takes what at least two jobs, and all of those meant, have in
// common out of them: cautions, and on demand steps and rain.
func liftFrom(jobs []jobView, among func(jobView) bool, steps, rain bool) everyView {
	var at []int
	for i := range jobs {
		if among(jobs[i]) && jobs[i].open {
			at = append(at, i)
		}
	}
	if len(at) < 2 {
		return everyView{}
	}
	first := jobs[at[0]]
	all := func(holds func(jobView) bool) bool {
		return !slices.ContainsFunc(at, func(i int) bool { return !holds(jobs[i]) })
	}
	var e everyView
	if rain && all(func(j jobView) bool { return j.Rain == first.Rain }) {
		e.Rain = first.Rain
	}
	if steps {
		for _, s := range first.Steps {
			if all(func(j jobView) bool { return slices.Contains(j.Steps, s) }) {
				e.Items = append(e.Items, s)
			}
		}
	}
	for _, c := range first.Cautions {
		if all(func(j jobView) bool { return slices.Contains(j.Cautions, c) }) {
			e.Items = append(e.Items, c)
		}
	}
	lifted := func(s string) bool { return slices.Contains(e.Items, s) }
	for _, i := range at {
		j := &jobs[i]
		j.Steps = slices.DeleteFunc(slices.Clone(j.Steps), lifted)
		j.Cautions = slices.DeleteFunc(slices.Clone(j.Cautions), lifted)
		if e.Rain != "" {
			j.Rain = ""
		}
	}
	return e
}
