package reportfmt

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestMarkdownText(t *testing.T) {
	require.Equal(t, `\*a\* \_b\_ \<i\> \[x\](y) \| \\`, markdownText(`*a* _b_ <i> [x](y) | \`))
	require.Equal(t, `\- a - 1. +`, markdownText(`- a - 1. +`))
	require.Equal(t, `12\. a`, markdownText(`12. a`))
	require.Equal(t, `1\) a`, markdownText(`1) a`))
	require.Equal(t, `12.5 ft`, markdownText(`12.5 ft`))
	require.Equal(t, "`a`", markdownCode("a"))
	require.Equal(t, "``a ` b``", markdownCode("a ` b"))
	require.Equal(t, "`` `a` ``", markdownCode("`a`"))
}
