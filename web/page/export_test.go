package page

// StandingFindings for the tests outside the package.
var StandingFindings = standingFindings
