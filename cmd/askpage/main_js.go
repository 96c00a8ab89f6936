package main

import (
	"syscall/js"

	"swardbook/schedule/door"
)

func main() {
	js.Global().Set("swardbookPlanner", door.Mark)
	js.Global().Set("swardbook", js.FuncOf(func(_ js.Value, args []js.Value) any {
		if len(args) != 1 {
			return `{"error":"one question at a time"}`
		}
		return answer(args[0].String())
	}))
	js.Global().Get("document").Call("dispatchEvent", js.Global().Get("Event").New("planner"))
	select {}
}
