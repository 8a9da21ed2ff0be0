package org.axlecause.outbound;

import java.net.Inet4Address;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.List;

/**
 * Tells addresses of the public internet from all others: private, local, reserved and multicast ones. IPv4 by the IANA
 * special-purpose address registry (RFC 6890), from memory; of IPv6 only global unicast is public. Addresses that carry
 * an IPv4 address count as that one.
 */
final class PublicAddresses {

    private static final List<Range> CLOSED_V4 = List.of(
            new Range("0.0.0.0", 8),
            new Range("10.0.0.0", 8),
            new Range("100.64.0.0", 10),
            new Range("127.0.0.0", 8),
            new Range("169.254.0.0", 16),
            new Range("172.16.0.0", 12),
            new Range("192.0.0.0", 24),
            new Range("192.0.2.0", 24),
            new Range("192.88.99.0", 24),
            new Range("192.168.0.0", 16),
            new Range("198.18.0.0", 15),
            new Range("198.51.100.0", 24),
            new Range("203.0.113.0", 24),
            new Range("224.0.0.0", 4),
            new Range("240.0.0.0", 4));

    private static final Range GLOBAL_UNICAST = new Range("2000::", 3);

    private static final List<Range> CLOSED_V6 =
            List.of(new Range("2001::", 23), new Range("2001:db8::", 32), new Range("3fff::", 20));

    private static final Range NAT64 = new Range("64:ff9b::", 96);
    private static final int NAT64_OFFSET = 12;
    private static final Range SIX_TO_FOUR = new Range("2002::", 16);
    private static final int SIX_TO_FOUR_OFFSET = 2;
    private static final int V4_BYTES = 4;

    private PublicAddresses() {}

    /** Whether this address is one of the public internet. */
    static boolean contains(InetAddress address) {
        if (address instanceof Inet4Address) {
            return isPublicV4(address.getAddress());
        }
        return address instanceof Inet6Address && isPublicV6(address.getAddress());
    }

    private static boolean isPublicV4(byte[] address) {
        return CLOSED_V4.stream().noneMatch(range -> range.contains(address));
    }

    private static boolean isPublicV6(byte[] address) {
        if (NAT64.contains(address)) {
            return isPublicV4(Arrays.copyOfRange(address, NAT64_OFFSET, NAT64_OFFSET + V4_BYTES));
        }
        if (SIX_TO_FOUR.contains(address)) {
            return isPublicV4(Arrays.copyOfRange(address, SIX_TO_FOUR_OFFSET, SIX_TO_FOUR_OFFSET + V4_BYTES));
        }
        return GLOBAL_UNICAST.contains(address) && CLOSED_V6.stream().noneMatch(range -> range.contains(address));
    }

    /** The addresses that begin with the same bits. */
    private static final class Range {

        private final byte[] start;
        private final int bits;

        Range(String start, int bits) {
            try {
                this.start = InetAddress.getByName(start).getAddress();
            } catch (UnknownHostException e) {
                throw new IllegalArgumentException(start + " is no address", e);
            }
            this.bits = bits;
        }

        boolean contains(byte[] address) {
            if (address.length != start.length) {
                return false;
            }
            for (int bit = 0; bit < bits; bit++) {
                int mask = 0x80 >> (bit % Byte.SIZE);
                if ((address[bit / Byte.SIZE] & mask) != (start[bit / Byte.SIZE] & mask)) {
                    return false;
                }
            }
            return true;
        }
    }
}
