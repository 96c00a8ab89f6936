package main

import (
	"encoding/hex"
	"encoding/json"
	"fmt"

	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/door"
	"swardbook/schedule/page"
)

// request is what the page's script asks the planner.
type request struct {
	What   string     `json:"what"`   // "press", "where", "fill", "answer", "sheet", "calendar", "site", "book"
	Fields [][]string `json:"fields"` // of the form: name, text
	Press  string     `json:"press"`
	Code   string     `json:"code"`
	Was    string     `json:"was"`  // the code of the answers from before
	Part   string     `json:"part"` // which calendar: "" all of it, "person/mo", "area/lawn"
	Link   string     `json:"link"` // the address of the page, without its fragment
	Today  string     `json:"today"`
	ID     string     `json:"id"` // eight bytes drawn by lot, in hex
}

// reply is what the planner answers to the script.
type reply struct {
	Page   string   `json:"page,omitzero"` // the page to show, or a file to save
	Screen string   `json:"screen,omitzero"`
	Code   string   `json:"code,omitzero"`
	Said   []string `json:"said,omitzero"`
	Error  string   `json:"error,omitzero"`
}

// here is the ask page in the browser, which plans by itself.
var here = door.Door{Planner: true}

func (q *request) reply() (r reply, err error) {
	today, err := schedule.ParseDate(q.Today)
	if err != nil {
		return r, err
	}
	var was ask.Answers
	if q.Was != "" {
		was, _ = ask.Decode(q.Was) // if these cannot be read, the new program is shown without what changed
	}
	if q.What == "press" || q.What == "where" {
		t := door.Turn{Press: q.Press, Was: was, Today: today}
		if raw, err := hex.DecodeString(q.ID); err == nil && len(raw) == len(t.ID) {
			copy(t.ID[:], raw)
		} else {
			return r, fmt.Errorf("no id was drawn")
		}
		for _, f := range q.Fields {
			if len(f) == 2 {
				t.Form = append(t.Form, ask.Answer{Key: f[0], Value: f[1]})
			}
		}
		if q.What == "where" {
			r.Said = door.Understood(t.Form, today)
			return r, nil
		}
		next, err := here.Press(t)
		return reply{Page: string(next.Page), Screen: next.Screen, Code: next.Code}, err
	}
	answers, err := ask.Decode(q.Code)
	if err != nil {
		return r, err
	}
	var out []byte
	switch q.What {
	case "fill":
		out, err = here.Fill(answers, today)
	case "answer":
		at := "#/" + q.Code
		_, book := ask.File(answers)
		to := page.Answered{Today: today, Change: at + "/change", Link: q.Link + at, Calendar: at + "/lawn.ics", Site: at + "/lawn.toml", Sheet: at + "/sheet", Again: "#"}
		if book != nil {
			to.Record = at + "/lawn.record.csv"
		}
		out, err = door.Answer(answers, was, to, func(p door.Part) page.Own {
			return page.Own{Name: p.Name, Calendar: at + "/" + p.Path() + ".ics"}
		})
	case "sheet":
		out, err = door.Sheet(answers, today, q.Link+"#/"+q.Code)
	case "calendar":
		out, err = door.Calendar(answers, q.Part, today, q.Link+"#/"+q.Code)
	case "site":
		out, _ = ask.File(answers)
	case "book":
		_, out = ask.File(answers)
	default:
		err = fmt.Errorf("nothing is known of %q", q.What)
	}
	return reply{Page: string(out)}, err
}

// answer answers a question, both as JSON. Whatever goes wrong in it ends this one
// answer only.
func answer(question string) (text string) {
	defer func() {
		if r := recover(); r != nil {
			text = encode(reply{Error: fmt.Sprint("the planner failed: ", r)})
		}
	}()
	var q request
	if err := json.Unmarshal([]byte(question), &q); err != nil {
		return encode(reply{Error: err.Error()})
	}
	r, err := q.reply()
	if err != nil {
		r.Error = err.Error()
	}
	return encode(r)
}

func encode(r reply) string {
	b, err := json.Marshal(r)
	if err != nil {
		return `{"error":"the answer could not be written"}`
	}
	return string(b)
}
