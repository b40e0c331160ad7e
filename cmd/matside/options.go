package main

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// optionError says in plain words what is wrong with an option.
func optionError(c *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var wrong *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown) && unknown.GetSpecifiedShortnames() != "":
		return usagef("`%s` has no option -%s", c.CommandPath(), printable(unknown.GetSpecifiedName()))
	case errors.As(err, &unknown):
		return usagef("`%s` has no option --%s%s", c.CommandPath(), printable(unknown.GetSpecifiedName()), optionNames(c))
	case errors.As(err, &bare):
		return usagef("--%s needs something behind it: %s", bare.GetFlag().Name, bare.GetFlag().Usage)
	case errors.As(err, &wrong):
		return usagef("--%s %s won't do: %s", wrong.GetFlag().Name, printable(wrong.GetValue()), wanted(wrong))
	}
	return usageError{err}
}

// wanted says what would do in place of a wrong value.
func wanted(e *pflag.InvalidValueError) string {
	if e.GetFlag().Value.Type() == "int" {
		return "it takes a whole number"
	}
	return e.Unwrap().Error()
}

// optionNames tells the options that c takes, but for those that all commands
// do.
func optionNames(c *cobra.Command) string {
	var names []string
	c.NonInheritedFlags().VisitAll(func(f *pflag.Flag) {
		if !f.Hidden && f.Name != "help" {
			names = append(names, "--"+f.Name)
		}
	})
	if len(names) == 0 {
		return ""
	}
	return "; it takes " + strings.Join(names, ", ")
}
