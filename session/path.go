package session

import (
	"errors"
	"path/filepath"
)

// FileName is the data file's name in its usual folder.
const FileName = "matside.db"

// Path says where the data file is: the option's value, else MATSIDE_DB, else
// the usual place for goos. It is pure; getenv is os.Getenv.
//
// The usual place is $XDG_DATA_HOME/matside/matside.db, where that is an
// absolute path (the XDG Base Directory Specification tells us to ignore
// others), else .local/share under HOME; on Windows LocalAppData; on a Mac
// Library/Application Support under HOME.
func Path(option, goos string, getenv func(string) string) (string, error) {
	if option != "" {
		return option, nil
	}
	if p := getenv("MATSIDE_DB"); p != "" {
		return p, nil
	}
	if p := getenv("XDG_DATA_HOME"); filepath.IsAbs(p) {
		return filepath.Join(p, "matside", FileName), nil
	}
	if goos == "windows" {
		if p := getenv("LocalAppData"); p != "" {
			return filepath.Join(p, "matside", FileName), nil
		}
		if p := getenv("USERPROFILE"); p != "" {
			return filepath.Join(p, "AppData", "Local", "matside", FileName), nil
		}
		return "", errNoHome
	}
	home := getenv("HOME")
	if home == "" {
		return "", errNoHome
	}
	if goos == "darwin" {
		return filepath.Join(home, "Library", "Application Support", "matside", FileName), nil
	}
	return filepath.Join(home, ".local", "share", "matside", FileName), nil
}

var errNoHome = errors.New("no home folder is known; say where the data file is with --db FILE")
