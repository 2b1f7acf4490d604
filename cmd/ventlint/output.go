package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"
	"syscall"
)

type writer = io.Writer

// write sends a report to standard output. A reader that has seen enough and closes
// its end, as "head" does, is no failure.
func write(m machine, report func(writer) error) error {
	err := buffer(m.stdout, report)
	if errors.Is(err, syscall.EPIPE) {
		return nil
	}
	return plain(err)
}

func buffer(to writer, report func(writer) error) error {
	buffered := bufio.NewWriter(to)
	if err := report(buffered); err != nil {
		return err
	}
	return buffered.Flush()
}

// staged is a report that is written to the disk but not yet under its name.
type staged struct{ temporary, path string }

// stage writes a report beside the file that it will be.
func stage(path string, report func(writer) error) (staged, error) {
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return staged{}, fmt.Errorf("--output %q is not a file that can be replaced", path)
	}
	file, err := begin(path)
	if err != nil {
		return staged{}, plain(err)
	}
	s := staged{file.Name(), path}
	if err := fill(file, report); err != nil {
		s.drop()
		return staged{}, plain(err)
	}
	return s, nil
}

func fill(file *os.File, report func(writer) error) error {
	err := buffer(file, report)
	if err == nil {
		err = file.Chmod(0o644)
	}
	if err == nil {
		err = file.Sync()
	}
	if closed := file.Close(); err == nil {
		err = closed
	}
	return err
}

// unfinished are the files that are staged. An interrupt removes them, and keeps the
// lock, so that nothing is staged or committed after it.
var unfinished = struct {
	sync.Mutex
	paths map[string]bool
}{paths: map[string]bool{}}

// begin makes a file that can be given the name of another.
func begin(path string) (*os.File, error) {
	unfinished.Lock()
	defer unfinished.Unlock()
	file, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err == nil {
		unfinished.paths[file.Name()] = true
	}
	return file, err
}

// commit gives the file its name, in place of one that had it.
func (s staged) commit() error {
	unfinished.Lock()
	defer unfinished.Unlock()
	err := os.Rename(s.temporary, s.path)
	if err == nil {
		delete(unfinished.paths, s.temporary)
	}
	return plain(err)
}

// drop leaves nothing behind; what is committed stays.
func (s staged) drop() {
	unfinished.Lock()
	defer unfinished.Unlock()
	os.Remove(s.temporary)
	delete(unfinished.paths, s.temporary)
}
