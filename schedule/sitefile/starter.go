package sitefile

import (
	_ "embed"
	"strings"

	"swardbook/schedule"
)

//go:embed starter.toml
var starter string

// Starter gives the text of a new site file with the id and the first day
// given. It can be read as it stands, and shows every key there is, most of
// them behind a #.
func Starter(id string, start schedule.Date) []byte {
	return []byte(strings.NewReplacer("@ID@", id, "@START@", start.String(),
		"@THROUGH@", start.AddMonths(12).AddDays(-1).String()).Replace(starter))
}
