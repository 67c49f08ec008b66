// Package engines runs the built page in Firefox and in WebKitGTK, with real
// pointer and key actions: Firefox speaks WebDriver BiDi over a websocket,
// WebKitGTK the W3C WebDriver protocol by way of WebKitWebDriver. The tests of
// package e2e try everything in Chromium; here stand the walks that have to work
// in every engine. Linux only, since the engines come from Debian.
package engines
