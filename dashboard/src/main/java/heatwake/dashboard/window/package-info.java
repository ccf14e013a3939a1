/**
 * The dashboard's window. Panels only bind what the presenters say; reading and analysing happen on
 * a thread of their own.
 */
package heatwake.dashboard.window;
