package main

import (
	"bufio"
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"
	"syscall"
)

type writer = io.Writer

// outlet is standard output. It remembers that it could not be written to: help and
// the like are printed by what does not ask.
type outlet struct {
	to  writer
	err error // the first
}

func (o *outlet) Write(text []byte) (int, error) {
	n, err := o.to.Write(text)
	o.err = cmp.Or(o.err, err)
	return n, err
}

// failure is what could not be written. A reader that has seen enough and closes its
// end, as "head" does, is none.
func (o *outlet) failure() error {
	if errors.Is(o.err, syscall.EPIPE) {
		return nil
	}
	return plain(o.err)
}

// write sends a report to standard output; one that nobody reads on is no failure.
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
type staged struct {
	path string
	file *os.File
	text *bufio.Writer
}

// stage begins a report beside the file that it will be.
func stage(path string) (*staged, error) {
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return nil, fmt.Errorf("--output %q is not a file that can be replaced", path)
	}
	file, err := begin(path)
	if err != nil {
		return nil, plain(err)
	}
	return &staged{path, file, bufio.NewWriterSize(file, atOnce)}, nil
}

// atOnce is how many bytes go to a file at once.
const atOnce = 64 << 10

// finish brings all of it to the disk.
func (s *staged) finish() error {
	err := s.text.Flush()
	if err == nil {
		err = s.file.Chmod(0o644)
	}
	if err == nil {
		err = s.file.Sync()
	}
	if closed := s.file.Close(); err == nil {
		err = closed
	}
	return plain(err)
}

// commit gives the file its name, in place of one that had it.
func (s *staged) commit() error {
	unfinished.Lock()
	defer unfinished.Unlock()
	err := os.Rename(s.file.Name(), s.path)
	if err == nil {
		delete(unfinished.paths, s.file.Name())
	}
	return plain(err)
}

// drop leaves nothing behind; what is committed stays.
func (s *staged) drop() {
	s.file.Close()
	forget(s.file.Name())
}

// save writes a file whole or not at all.
func save(path string, report func(writer) error) error {
	s, err := stage(path)
	if err != nil {
		return err
	}
	defer s.drop()
	if err := report(s.text); err != nil {
		return plain(err)
	}
	if err := s.finish(); err != nil {
		return err
	}
	return s.commit()
}

// unfinished are the files that hold what is not yet written. An interrupt removes
// them, and keeps the lock, so that nothing is staged or committed after it.
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

// forget removes a file that was begun, unless it has another name by now.
func forget(path string) {
	unfinished.Lock()
	defer unfinished.Unlock()
	if unfinished.paths[path] && os.Remove(path) == nil {
		delete(unfinished.paths, path)
	}
}
