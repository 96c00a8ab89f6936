package climate

// Source is where a figure comes from.
type Source struct {
	Cite  string // author, title, year
	Where string // address, "" if none
	How   string // seen: read; part: read in part; memory: recalled; ours: our own work
}

// Sources resolves the keys that stand in brackets beside the figures.
func Sources() map[string]Source {
	return map[string]Source{
		"model": {
			Cite: "swardbook climate model: fitted by this project on US Climate Normals 1981-2010 (5,912 stations), the 2023 hardiness map and US Climate Reference Network soil temperatures of 2020; package climate states the equations.",
			How:  "ours",
		},
		"ncei-normals": {
			Cite:  "NOAA National Centers for Environmental Information. US Climate Normals 1981-2010: monthly temperature, freeze-date and growing-degree-day products.",
			Where: "www.ncei.noaa.gov/products/land-based-station/us-climate-normals",
			How:   "part",
		},
		"uscrn": {
			Cite:  "NOAA National Centers for Environmental Information. US Climate Reference Network, daily product, 2020: air and soil temperature.",
			Where: "www.ncei.noaa.gov/products/land-based-station/us-climate-reference-network",
			How:   "part",
		},
		"usda-zones": {
			Cite:  "US Department of Agriculture, Agricultural Research Service. Plant Hardiness Zone Map, 2023.",
			Where: "planthardiness.ars.usda.gov",
			How:   "memory",
		},
		"gp-code": {
			Cite:  "Woods, M. Growth potential scripts: cool-season 20 °C and 5.5, warm-season 31 °C and 7, held at 1 above 31 °C.",
			Where: "github.com/micahwoods/gp_inflection",
			How:   "seen",
		},
		"gp-pace": {
			Cite:  "PACE Turf. Modified warm season growth potential model; Turf growth potentials: a tool with many uses.",
			Where: "www.paceturf.org/gallery/detail/modified-warm-season-gp-model",
			How:   "seen",
		},
		"ny-nmp-2019": {
			Cite:  "Menchyk, N. Nutrient management planning for New York State golf courses. 2019, page 4, figure 5.",
			Where: "nygcf.com/nysgolfbmp_com/nutrient_management_planning_2019/6",
			How:   "seen",
		},
		"soldat-fall": {
			Cite:  "Soldat, D. Rethinking fall soluble nitrogen fertilization of cool-season grasses. Interview, Golfdom.",
			Where: "www.golfdom.com/rethinking-fall-soluble-nitrogen-fertilization-of-cool-season-grasses/",
			How:   "seen",
		},
		"purdue-ay3": {
			Cite:  "Reicher, Z. & Throssell, C. Establishing turfgrass areas from seed. Purdue AY-3, 1998.",
			Where: "www.agry.purdue.edu/turfnew/pubs/ay3.htm",
			How:   "part",
		},
		"az-1995": {
			Cite:  "Kopec, D.M. Fall turf fertilization for cool season grasses. University of Arizona Turf Tips, August 1995.",
			Where: "turf.arizona.edu/tips895.html",
			How:   "seen",
		},
		"germ-soil-temp": {
			Cite: "Home-garden pages giving soil temperature for germination: cool-season 50-65 °F, warm-season 65-70 °F, as extension services widely print them.",
			How:  "seen",
		},
		"geonames": {
			Cite:  "GeoNames. Postal codes of the United States, CC BY 4.0: places, counties and positions of ZIP codes.",
			Where: "download.geonames.org/export/zip",
			How:   "seen",
		},
		"windows": {
			Cite: "Published windows for lawns on 83 pages of US extension services, newspapers and others, 2002-2024; testdata/windows.csv lists each with its citation.",
			How:  "part",
		},
		"common": {Cite: "Common practice, no source.", How: "memory"},
	}
}
