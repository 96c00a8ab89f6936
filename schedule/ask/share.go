package ask

import (
	"slices"
	"strings"
)

// unshared are the keys that no address carries, and why not.
var unshared = []struct{ key, why string }{
	{"place.normals", "the station file (place.normals) stays behind: an address holds no file; type the ZIP or the monthly means instead"},
	{"calendar", "reminders, link and secret ([calendar]) stay behind: they belong to a site file"},
}

// people are the keys that name people.
var people = []string{"crew.people", "crew.absent", "crew.who"}

func below(key, table string) bool { return key == table || strings.HasPrefix(key, table+".") }

// names tells the keys that name people: in the crew, or beside a line of the record book.
func names(key string) bool {
	return slices.ContainsFunc(people, func(t string) bool { return below(key, t) }) ||
		strings.HasPrefix(key, record) && strings.HasSuffix(key, ".by")
}

// Share gives what an address may carry of the answers, and says what stays behind and
// why. Names of people come along only if that is asked for.
func Share(a Answers, people bool) (shared Answers, left []string) {
	say := func(why string) {
		if !slices.Contains(left, why) {
			left = append(left, why)
		}
	}
	for _, one := range a.Tidy() { // so that no key has a second spelling
		stays := names(one.Key) && !people
		if stays && strings.TrimSpace(one.Value) != "" {
			say("the names of people, and who does what, stay behind")
		}
		for _, u := range unshared {
			if below(one.Key, u.key) {
				stays = true
				say(u.why)
			}
		}
		if !stays {
			shared = append(shared, one)
		}
	}
	return shared, left
}
