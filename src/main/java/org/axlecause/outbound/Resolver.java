package org.axlecause.outbound;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;

/** Finds the addresses behind a name; an interface so that a test can be a name server with bad intentions. */
interface Resolver {

    /** All addresses, in the order in which they are to be tried. */
    List<InetAddress> resolve(String host) throws UnknownHostException;
}
