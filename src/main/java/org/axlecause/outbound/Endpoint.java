package org.axlecause.outbound;

import java.net.InetAddress;

/**
 * Where a message goes: an address that was checked, and the name that it was found under.
 *
 * @param secure whether TLS is spoken
 * @param host the name, for the Host field and for TLS
 * @param port the port
 * @param target path and query
 * @param address the one address that is connected to
 */
record Endpoint(boolean secure, String host, int port, String target, InetAddress address) {}
