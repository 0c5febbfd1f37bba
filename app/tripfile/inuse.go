package tripfile

import (
	"os"
	"sync"

	"sumpter/domain/prose"
)

// openFiles are the trip files this process has open. On Unix a process loses
// all its locks on a file when it closes any handle of it, so a second opening
// here must be refused before it touches the file.
var openFiles struct {
	sync.Mutex
	list []os.FileInfo
}

// claim notes a file as open and gives what ends that.
func claim(path string) (release func(), err error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, explain(path, err)
	}
	openFiles.Lock()
	defer openFiles.Unlock()
	for _, open := range openFiles.list {
		if os.SameFile(open, info) {
			return nil, fail(path, ErrInUse, prose.Say("this program has it open already"))
		}
	}
	openFiles.list = append(openFiles.list, info)
	return sync.OnceFunc(func() {
		openFiles.Lock()
		defer openFiles.Unlock()
		for i, open := range openFiles.list {
			if open == info {
				openFiles.list = append(openFiles.list[:i], openFiles.list[i+1:]...)
				return
			}
		}
	}), nil
}
