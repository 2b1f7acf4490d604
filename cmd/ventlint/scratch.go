package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
)

// scratch holds what cannot be written yet: in memory, and in a file of a folder once
// it is much.
type scratch struct {
	folder string
	early  []byte
	file   *os.File // nil as long as it is not much
	size   int64
}

// much is more than a report of one design has.
const much = 2 << 20

func (s *scratch) Write(text []byte) (int, error) {
	s.size += int64(len(text))
	if s.file == nil && s.size <= much {
		s.early = append(s.early, text...)
		return len(text), nil
	}
	if s.file == nil {
		if err := s.spill(); err != nil {
			return 0, err
		}
	}
	return s.file.Write(text)
}

// spill goes on in a file.
func (s *scratch) spill() error {
	file, err := begin(filepath.Join(s.folder, "ventlint"))
	if err != nil {
		return err
	}
	s.file = file
	forget(file.Name()) // where a system lets go of a name in use, a killed run leaves nothing
	_, err = file.Write(s.early)
	s.early = nil
	return err
}

func (s *scratch) ReadAt(to []byte, at int64) (int, error) {
	if s.file != nil {
		return s.file.ReadAt(to, at)
	}
	return bytes.NewReader(s.early).ReadAt(to, at)
}

// copy writes all that it holds.
func (s *scratch) copy(to writer) error {
	_, err := io.Copy(to, io.NewSectionReader(s, 0, s.size))
	return err
}

// drop leaves nothing behind.
func (s *scratch) drop() {
	if s.file != nil {
		s.file.Close()
		forget(s.file.Name())
	}
}
