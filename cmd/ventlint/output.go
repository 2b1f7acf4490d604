package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

type writer = io.Writer

// write sends a report to standard output.
func write(m machine, report func(writer) error) error {
	return plain(buffer(m.stdout, report))
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
	file, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
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

// commit gives the file its name, in place of one that had it.
func (s staged) commit() error { return plain(os.Rename(s.temporary, s.path)) }

// drop leaves nothing behind; what is committed stays.
func (s staged) drop() { os.Remove(s.temporary) }
