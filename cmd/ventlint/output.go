package main

import (
	"bufio"
	"io"
	"os"
	"path/filepath"
)

type writer = io.Writer

// write sends a report to a file, whole or not at all, or to standard output.
func write(m machine, path string, report func(writer) error) error {
	if path == "" {
		buffered := bufio.NewWriter(m.stdout)
		if err := report(buffered); err != nil {
			return plain(err)
		}
		return plain(buffered.Flush())
	}
	temporary, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return plain(err)
	}
	defer os.Remove(temporary.Name()) // after the rename there is nothing to remove
	if err := fill(temporary, report); err != nil {
		return plain(err)
	}
	return plain(os.Rename(temporary.Name(), path))
}

func fill(file *os.File, report func(writer) error) error {
	buffered := bufio.NewWriter(file)
	err := report(buffered)
	if err == nil {
		err = buffered.Flush()
	}
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
