package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"github.com/spf13/cobra"
)

// release is the version that a release build writes in (cmd/release).
var release = ""

func newVersion(w world) *cobra.Command {
	return &cobra.Command{
		Use: "version", Short: "Print the version and the commit it was built from", Args: noWords,
		RunE: func(*cobra.Command, []string) error {
			info, _ := debug.ReadBuildInfo()
			_, err := fmt.Fprintln(w.out, versionLine(release, info))
			return err
		},
	}
}

// versionLine tells what was built, from what, with what. A build from a
// checkout knows its commit; one from a plain folder does not, and says so.
func versionLine(release string, info *debug.BuildInfo) string {
	version, commit := release, "unknown"
	if info != nil {
		if version == "" {
			version = info.Main.Version
		}
		if revision := setting(info, "vcs.revision"); revision != "" {
			commit = revision
			if setting(info, "vcs.modified") == "true" {
				commit += ", changed since"
			}
		}
	}
	if version == "" || version == "(devel)" {
		version = "of no release"
	}
	return fmt.Sprintf("matside %s, commit %s, %s, %s/%s", version, commit, runtime.Version(), runtime.GOOS, runtime.GOARCH)
}

func setting(info *debug.BuildInfo, key string) string {
	for _, s := range info.Settings {
		if s.Key == key {
			return s.Value
		}
	}
	return ""
}
