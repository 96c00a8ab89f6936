package climate

import "strings"

// Source is where a figure comes from, named so that a librarian finds it.
type Source struct {
	By    string // author or institution, beginning with the name it is known by
	Title string // in square brackets if the source has no title of its own
	Year  string // "" if undated
	In    string // series and number, journal and pages; the part that is used
	Note  string // how it was read, if not as it was published
	Where string // the address where it was read
	How   string // seen: read; part: read in part; memory: recalled; ours: our own work
}

// Cite names the source in full, but for the address.
func (s Source) Cite() string {
	year := s.Year
	switch {
	case s.By == "":
		return s.Title
	case year == "" && s.How == "memory":
		year = "Undated"
	case year == "":
		year = "Undated, read 2026"
	}
	var out strings.Builder
	for _, part := range []string{s.By, year, s.Title, s.In, s.Note} {
		if part == "" {
			continue
		}
		if out.Len() > 0 {
			out.WriteByte(' ')
		}
		out.WriteString(part)
		if !strings.HasSuffix(part, ".") && !strings.HasSuffix(part, "?") {
			out.WriteByte('.')
		}
	}
	return out.String()
}

// Tag is the short name of the source: the first author or the institution, and
// the year if there is one.
func (s Source) Tag() string {
	name := s.By
	for _, mark := range []string{", ", " ("} {
		name, _, _ = strings.Cut(name, mark)
	}
	if s.Year != "" {
		name += " " + s.Year
	}
	return name
}

// Sources resolves the keys that stand in brackets beside the figures.
func Sources() map[string]Source {
	return map[string]Source{
		"model": {
			Title: "swardbook climate model: fitted by this project on US Climate Normals 1981-2010 (5,912 stations), the 2023 hardiness map and US Climate Reference Network soil temperatures of 2020; package climate states the equations.",
			How:   "ours",
		},
		"ncei-normals": {
			By:    "NOAA National Centers for Environmental Information",
			Title: "US Climate Normals 1981-2010",
			Year:  "2011",
			In:    "Monthly temperature, freeze-date and growing-degree-day products",
			Where: "www.ncei.noaa.gov/products/land-based-station/us-climate-normals",
			How:   "part",
		},
		"uscrn": {
			By:    "NOAA National Centers for Environmental Information",
			Title: "US Climate Reference Network, daily product",
			Year:  "2020",
			In:    "Air and soil temperature",
			Where: "www.ncei.noaa.gov/products/land-based-station/us-climate-reference-network",
			How:   "part",
		},
		"usda-zones": {
			By:    "US Department of Agriculture, Agricultural Research Service",
			Title: "Plant Hardiness Zone Map",
			Year:  "2023",
			Where: "planthardiness.ars.usda.gov",
			How:   "memory",
		},
		"gp-code": {
			By:    "Woods, M. (Asian Turfgrass Center)",
			Title: "[Growth potential scripts: cool-season 20 °C and 5.5, warm-season 31 °C and 7, held at 1 above 31 °C]",
			Where: "github.com/micahwoods/gp_inflection (r/full_time_series.R)",
			How:   "seen",
		},
		"gp-pace": {
			By:    "PACE Turf",
			Title: "Modified warm season growth potential model",
			In:    "With Turf growth potentials: a tool with many uses",
			Where: "www.paceturf.org/gallery/detail/modified-warm-season-gp-model",
			How:   "seen",
		},
		"ny-nmp-2019": {
			By:    "Menchyk, N.",
			Title: "Nutrient management planning for New York State golf courses",
			Year:  "2019",
			In:    "New York Golf Course Foundation, page 4, figure 5: growth potential by month, Kings Park, N and the other elements",
			Where: "nygcf.com/nysgolfbmp_com/nutrient_management_planning_2019/6",
			How:   "seen",
		},
		"soldat-fall": {
			By:    "Soldat, D. (University of Wisconsin-Madison)",
			Title: "Rethinking fall soluble nitrogen fertilization of cool-season grasses",
			In:    "Interview, Golfdom",
			Where: "www.golfdom.com/rethinking-fall-soluble-nitrogen-fertilization-of-cool-season-grasses/",
			How:   "seen",
		},
		"purdue-ay3": {
			By:    "Reicher, Z. & Throssell, C.",
			Title: "Establishing turfgrass areas from seed",
			Year:  "1998",
			In:    "Purdue University AY-3",
			Where: "www.agry.purdue.edu/turfnew/pubs/ay3.htm",
			How:   "part",
		},
		"az-1995": {
			By:    "Kopec, D.M. (University of Arizona)",
			Title: "Fall turf fertilization for cool season grasses",
			Year:  "1995",
			In:    "Turf Tips, August 1995",
			Where: "turf.arizona.edu/tips895.html",
			How:   "seen",
		},
		"geonames": {
			By:    "GeoNames",
			Title: "Postal codes of the United States",
			In:    "CC BY 4.0: places, counties and positions of ZIP codes",
			Where: "download.geonames.org/export/zip",
			How:   "seen",
		},
		"windows": {
			Title: "Published windows for lawns on 83 pages of US extension services, newspapers and others, 2002-2024; testdata/windows.csv lists each with its citation.",
			How:   "ours",
		},
		"common": {Title: "Common practice, no source.", How: "memory"},
	}
}
