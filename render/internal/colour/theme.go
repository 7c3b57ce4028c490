package colour

// Theme is the set of colours a page is drawn in.
type Theme struct {
	Paper, Ink, Quiet, Line, Wash RGB
	Series                        []RGB
}

// SeriesCount is how many colours a theme has for series.
const SeriesCount = len(lightSeries)

// Light is the theme of bright screens; on paper it is used with a white background.
func Light() Theme {
	return Theme{
		Paper: must("#fbfaf7"), Ink: must("#1d2226"), Quiet: must("#555c63"), Line: must("#d9d5cb"), Wash: must("#f2efe8"),
		Series: series(lightSeries[:]),
	}
}

// Dark is the theme of dark screens.
func Dark() Theme {
	return Theme{
		Paper: must("#16191c"), Ink: must("#e6e4de"), Quiet: must("#a3a8ac"), Line: must("#363c42"), Wash: must("#1f2428"),
		Series: series(darkSeries[:]),
	}
}

// The series colours as OKLab lightness, chroma and hue in degrees, found by the program in
// the search folder and put in an order that sets neighbours far apart. The same row of both
// tables stands for the same curve.
var lightSeries = [...][3]float64{
	{0.382, 0.151, 263},
	{0.556, 0.124, 63},
	{0.521, 0.077, 195},
	{0.563, 0.168, 301},
	{0.424, 0.165, 26},
	{0.342, 0.133, 343},
}

var darkSeries = [...][3]float64{
	{0.612, 0.110, 242},
	{0.616, 0.105, 70},
	{0.858, 0.112, 192},
	{0.759, 0.104, 281},
	{0.744, 0.086, 23},
	{0.855, 0.115, 108},
}

func series(rows [][3]float64) []RGB {
	colours := make([]RGB, len(rows))
	for i, r := range rows {
		colours[i] = LCh(r[0], r[1], r[2]).RGB()
	}
	return colours
}

// must reads a colour of the tables above, which the tests read too.
func must(text string) RGB {
	c, err := Hex(text)
	if err != nil {
		panic("colour: " + err.Error())
	}
	return c
}
