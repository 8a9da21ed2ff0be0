package org.axlecause.outbound;

import io.quarkus.arc.DefaultBean;
import jakarta.inject.Singleton;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;

/** Asks the operating system. */
@DefaultBean
@Singleton
class SystemResolver implements Resolver {

    @Override
    public List<InetAddress> resolve(String host) throws UnknownHostException {
        return List.of(InetAddress.getAllByName(host));
    }
}
