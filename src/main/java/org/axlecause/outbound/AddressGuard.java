package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.net.IDN;
import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Lets messages go to the public internet only, so that nobody can make the service speak to what stands beside it. A
 * name is resolved once, all its addresses are checked, and the connection goes to a checked one; the next delivery is
 * checked anew.
 */
@ApplicationScoped
class AddressGuard {

    static final int LONGEST = 500;

    private static final int LONGEST_HOST = 253;
    private static final int HTTPS_PORT = 443;
    private static final int HTTP_PORT = 80;
    private static final int LAST_PORT = 65_535;
    private static final Set<Integer> PORTS = Set.of(HTTPS_PORT, 8443);
    private static final Pattern AUTHORITY = Pattern.compile("(\\[[^\\]]*]|[^\\[\\]:@]+)(?::(\\d{1,5}))?");
    private static final Pattern DOTTED = Pattern.compile("(0|[1-9]\\d{0,2})(\\.(0|[1-9]\\d{0,2})){3}");
    private static final Pattern LAST_LABEL_IS_A_NUMBER = Pattern.compile("(?i)(.*\\.)?(\\d+|0x[0-9a-f]*)\\.?");
    private static final Pattern NAME =
            Pattern.compile("(?i)[a-z0-9_]([a-z0-9_-]*[a-z0-9_])?(\\.[a-z0-9_]([a-z0-9_-]*[a-z0-9_])?)*\\.?");
    private static final String NOT_PUBLIC =
            "The host of the address doesn't stand for addresses of the public internet alone.";

    private final Resolver resolver;
    private final boolean insecure;

    AddressGuard(Resolver resolver, @ConfigProperty(name = "axlecause.outbound.insecure-addresses") boolean insecure) {
        this.resolver = resolver;
        this.insecure = insecure;
    }

    /** The address can't be used; says why in words for whoever subscribes. */
    static final class RefusedAddressException extends Exception {

        private static final long serialVersionUID = 1L;

        private final String words;

        RefusedAddressException(String words) {
            super(words);
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /** Where a message to this address goes now. */
    Endpoint endpoint(String address) throws RefusedAddressException {
        URI uri = uri(address);
        boolean secure = "https".equalsIgnoreCase(uri.getScheme());
        if (!secure && !(insecure && "http".equalsIgnoreCase(uri.getScheme()))) {
            throw new RefusedAddressException("The address begins with something else than https://.");
        }
        if (uri.getRawUserInfo() != null || uri.getRawFragment() != null) {
            throw new RefusedAddressException("The address holds a user or a fragment; leave them out.");
        }
        String authority = uri.getRawAuthority() == null ? "" : uri.getRawAuthority();
        Matcher parts = AUTHORITY.matcher(authority);
        if (!parts.matches()) {
            throw new RefusedAddressException("The address holds no host.");
        }
        int port = parts.group(2) != null ? Integer.parseInt(parts.group(2)) : secure ? HTTPS_PORT : HTTP_PORT;
        if (port < 1 || port > LAST_PORT || (!insecure && !PORTS.contains(port))) {
            throw new RefusedAddressException("The port of the address is " + port + "; allowed are 443 and 8443.");
        }
        String host = host(parts.group(1));
        return new Endpoint(secure, host, port, target(uri), checked(host));
    }

    private static URI uri(String address) throws RefusedAddressException {
        if (address.length() > LONGEST) {
            throw new RefusedAddressException("The address is longer than " + LONGEST + " characters.");
        }
        try {
            return new URI(address);
        } catch (URISyntaxException e) {
            throw new RefusedAddressException("The address is no URI; percent-encode what a URI can't hold.");
        }
    }

    /** The host in ASCII; spellings of an address that programs read differently are refused. */
    private static String host(String sent) throws RefusedAddressException {
        if (sent.startsWith("[") && sent.endsWith("]") && sent.indexOf('%') < 0) {
            return sent.substring(1, sent.length() - 1);
        }
        String host;
        try {
            host = IDN.toASCII(sent).toLowerCase(Locale.ROOT);
        } catch (IllegalArgumentException e) {
            throw new RefusedAddressException("The host of the address is no name.");
        }
        if (host.length() > LONGEST_HOST || !NAME.matcher(host).matches()) {
            throw new RefusedAddressException("The host of the address is no name.");
        }
        if (LAST_LABEL_IS_A_NUMBER.matcher(host).matches()
                && !DOTTED.matcher(host).matches()) {
            throw new RefusedAddressException(
                    "The host of the address is a number that programs read differently; write four decimal numbers.");
        }
        return host;
    }

    private static String target(URI uri) {
        String path = uri.getRawPath() == null || uri.getRawPath().isEmpty() ? "/" : uri.getRawPath();
        return uri.getRawQuery() == null ? path : path + '?' + uri.getRawQuery();
    }

    /** So that nobody on the way looks the name up once more. */
    private static InetAddress withoutName(InetAddress address) {
        try {
            return InetAddress.getByAddress(address.getAddress());
        } catch (UnknownHostException e) {
            throw new IllegalStateException("An address has the length of an address", e);
        }
    }

    private InetAddress checked(String host) throws RefusedAddressException {
        List<InetAddress> addresses;
        try {
            addresses = resolver.resolve(host);
        } catch (UnknownHostException e) {
            throw new RefusedAddressException(NOT_PUBLIC);
        }
        if (addresses.isEmpty() || (!insecure && !addresses.stream().allMatch(PublicAddresses::contains))) {
            throw new RefusedAddressException(NOT_PUBLIC);
        }
        return withoutName(addresses.get(0));
    }
}
