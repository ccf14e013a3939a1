/** What a recorder that is left alone tells of itself: status, flags as they arise, a heartbeat. */
package heatwake.collector.unattended;
