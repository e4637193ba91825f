package yaml_test

import (
	"testing"

	"firstdrop/internal/steady"
)

func TestMain(m *testing.M) { steady.Main(m) }
