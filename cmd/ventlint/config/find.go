package config

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// FileName is how a configuration is called where it is found unasked.
const FileName = "ventlint.toml"

// repository marks the root of a repository.
const repository = ".git"

// Find looks for a configuration in a folder and those around it, up to the root
// of the repository or of the file system. folder is an absolute path, and so is
// what is found; it is empty where there is none.
func Find(folder string) (string, error) {
	for {
		name := filepath.Join(folder, FileName)
		if ok, err := exists(name); ok || err != nil {
			return name, err
		}
		root, err := exists(filepath.Join(folder, repository))
		if around := filepath.Dir(folder); err == nil && !root && around != folder {
			folder = around
			continue
		}
		return "", err
	}
}

func exists(name string) (bool, error) {
	switch _, err := os.Lstat(name); {
	case err == nil:
		return true, nil
	case errors.Is(err, fs.ErrNotExist):
		return false, nil
	default:
		return false, err
	}
}
