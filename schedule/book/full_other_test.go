//go:build !linux

package book_test

import "os"

func full(*os.Root) int { return 2 }
