package ask

import (
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
)

// ToForm writes the answers into the fields of the ask page. What has no field there
// stays in the form under its key, so that the page can carry it.
func ToForm(a Answers) Form {
	var out Form
	mixed := map[string]int{}
	for _, one := range a {
		names := strings.Split(one.Key, ".")
		grass, inMixture := strings.CutPrefix(one.Key, strings.Join(names[:min(2, len(names))], ".")+".grass.")
		switch {
		case names[0] == "area" && inMixture:
			at := "area." + names[1]
			if mixed[at]++; mixed[at] == 1 {
				out = append(out, answer(at+".grass", Mixture))
			}
			if plain, err := strconv.Unquote(grass); err == nil {
				grass = plain
			}
			row := parts + at + ".mix." + strconv.Itoa(mixed[at])
			out = append(out, answer(row+".grass", grass), answer(row+".share", one.Value))
		case whoField(one.Key, a.Names("area")) != "" && a.Get("crew.people."+one.Value) != "":
			out = append(out, answer(whoField(one.Key, a.Names("area")), a.Get("crew.people."+one.Value)))
		case one.Key == "crew.days":
			for day := range strings.SplitSeq(one.Value, ",") {
				out = append(out, answer(one.Key, strings.TrimSpace(day)))
			}
		case names[0] == "material" && len(names) == 3 && names[2] == "analysis":
			out = append(out, ownNumbers(names[1], one.Value)...)
		case names[0] == "material" && len(names) == 3 && names[2] == "name" && one.Value == usualName(a.Get("material."+names[1]+".kind"), a.Get("material."+names[1]+".analysis")):
		default:
			out = append(out, a.parted(one)...)
		}
	}
	var people []string
	for _, one := range a {
		if below(one.Key, "crew.people") {
			people = append(people, one.Value)
		}
	}
	if len(people) > 0 {
		out = append(out, answer("form.people", strings.Join(people, ", ")))
	}
	for _, n := range a.Names("record") {
		if with := a.Get(record + n + ".material"); with != "" {
			out = append(out, answer(parts+record+n+".was", with))
		}
	}
	return out
}

// ownNumbers parts the analysis of a bag; one that is none stays whole in the first.
func ownNumbers(bag, analysis string) Form {
	at := parts + "material." + bag
	numbers := strings.Split(analysis, "-")
	if len(numbers) != 3 {
		return Form{answer(at+".n", analysis)}
	}
	return Form{answer(at+".n", numbers[0]), answer(at+".p", numbers[1]), answer(at+".k", numbers[2])}
}

// Units lists the units that the page offers for the number of a key, the usual first.
func Units(key string) []string {
	switch p, group := pattern(key); {
	case group != "" || strings.HasSuffix(p, "area.*.soil"):
		return []string{"ppm", "lb/acre"}
	case p == "area.*.size":
		return []string{"sq ft", "sq m", "acres"}
	case p == "area.*.soil.lime":
		return []string{"lb/1000 sq ft", "tons/acre", "lb/acre"}
	case slices.Contains([]string{"area.*.soil.nitrogen", "area.*.soil.phosphate", "area.*.soil.potash"}, p):
		return []string{"lb/1000 sq ft", "lb/acre"}
	case units[p] != "":
		return []string{units[p]}
	}
	return nil
}

// parted puts number and unit into fields of their own, where the page has both.
func (a Answers) parted(one Answer) Form {
	offered := Units(one.Key)
	text := strings.TrimSpace(one.Value)
	for side, square := range map[string]string{" ft": "sq ft", " m": "sq m"} {
		if plain, ok := strings.CutSuffix(text, side); ok && strings.HasSuffix(one.Key, ".size") && sides(plain) {
			return Form{answer(one.Key, plain), answer(parts+one.Key+".unit", square)}
		}
	}
	_, unit, ok := agronomy.Number(text)
	number := strings.TrimSpace(strings.TrimSuffix(text, unit))
	_, group := pattern(one.Key)
	switch {
	case !ok || unit == "" || !slices.Contains(offered, unit):
		return Form{one}
	case len(offered) == 1:
		return Form{answer(one.Key, number)}
	case group == "":
		return Form{answer(one.Key, number), answer(parts+one.Key+".unit", unit)}
	}
	// The sheetReadings of a sheet share a unit: that of the first.
	for _, other := range sheetReadings {
		if _, first, _ := agronomy.Number(a.Get(group + "." + other)); first != "" && slices.Contains(offered, first) {
			if first != unit {
				return Form{one}
			}
			out := Form{answer(one.Key, number)}
			if strings.HasSuffix(one.Key, "."+other) {
				out = append(out, answer(parts+group+".unit", unit))
			}
			return out
		}
	}
	return Form{one}
}
