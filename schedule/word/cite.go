package word

import (
	"cmp"
	"maps"
	"slices"
	"strings"
	"sync"

	"swardbook/agronomy"
	"swardbook/climate"
)

// Reference is one source behind the figures, under the key that reasons name.
type Reference struct {
	Key string
	agronomy.Source
}

// References lists every source of climate and agronomy by key.
func References() []Reference { return slices.Clone(references()) }

var references = sync.OnceValue(func() []Reference {
	all := agronomy.Sources()
	for key, s := range climate.Sources() {
		if _, shared := all[key]; !shared {
			all[key] = s
		}
	}
	var out []Reference
	for _, key := range slices.Sorted(maps.Keys(all)) {
		out = append(out, Reference{key, all[key]})
	}
	return out
})

// Cited finds the references behind a reason. What is no key of the list, such as
// the citation of a law, comes back as a reference whose key is its text.
func Cited(source string) []Reference {
	if source == "" {
		return nil
	}
	refs := references()
	find := func(key string) (Reference, bool) {
		i, ok := slices.BinarySearchFunc(refs, key, func(r Reference, k string) int { return cmp.Compare(r.Key, k) })
		if !ok {
			return Reference{}, false
		}
		return refs[i], true
	}
	var out []Reference
	free := false // the last reference is no key but text, and the next part may belong to it
	for part := range strings.SplitSeq(source, ", ") {
		r, ok := find(part)
		switch {
		case ok:
			out = append(out, r)
		case free:
			last := &out[len(out)-1]
			last.Key += ", " + part
			last.Title = last.Key
		default:
			out = append(out, Reference{part, agronomy.Source{Title: part}})
		}
		free = !ok
	}
	return out
}

// Short gives the few words that name a reference beside a figure: the first
// author or the institution, and the year if there is one.
func (r Reference) Short() string {
	switch {
	case r.Key == "common":
		return "common practice"
	case r.Key == "definitions":
		return "unit definitions"
	case r.Key == "atomic-weights":
		return "atomic weights"
	case r.How == "ours":
		return "swardbook"
	case r.By == "":
		return r.Title
	}
	return r.Tag()
}

// Checked says in words how far a reference was checked.
func (r Reference) Checked() string {
	if r.Key == "definitions" {
		return "exact, by definition"
	}
	switch r.How {
	case "seen":
		return "checked against the text"
	case "part":
		return "checked in part"
	case "memory":
		return "from memory, not checked"
	case "common":
		return "common practice, no published source"
	case "ours":
		return "this project's own work"
	}
	return "a law or rule"
}

// ShortSources names the sources behind a reason, "Moore 2025; common practice".
func ShortSources(source string) string {
	var out []string
	for _, r := range Cited(source) {
		out = append(out, r.Short())
	}
	return strings.Join(out, "; ")
}
