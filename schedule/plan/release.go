package plan

import "swardbook/schedule"

// Release counts the releases whose programs differ from those before; Released is the
// day of the last. A calendar of which no earlier copy is kept dates its entries by them:
// see [Stamps].
const Release = 1

// Released gives the day of the last release.
func Released() schedule.Date { return schedule.Date{Year: 2026, Month: 11, Day: 27} }

// Stamps tells since when each entry of a program that is made on a day reads as it does:
// since the last release, or since its season began if that was later, as until then the
// entry may have read otherwise. An entry of a season to come was first planned when the
// present season began, so no stamp lies in the future.
func Stamps(site *schedule.Site, today schedule.Date) (func(*schedule.Entry) schedule.Date, error) {
	year, err := site.Year()
	if err != nil {
		return nil, err
	}
	a := schedule.NewAlmanac(year, site.Start, site.Start)
	return func(e *schedule.Entry) schedule.Date {
		area := site.Area(e.Area)
		if area == nil {
			area = &site.Areas[0] // an entry for the whole site goes by the first area
		}
		s := area.Stand.Season()
		return schedule.Later(Released(), a.YearBegins(min(e.Season, a.TurfYear(today, s)), s))
	}, nil
}
