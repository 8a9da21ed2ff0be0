package org.axlecause.shared;

import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;

/** Sends a browser on to another page of ours. */
public final class SeeOther {

    private static final int STATUS = 303;

    private SeeOther() {}

    /** An answer that leads to this path; it names no host, since only a proxy before the service knows it (RFC 9110, 10.2.2). */
    public static Response.ResponseBuilder to(String path) {
        return Response.status(STATUS).header(HttpHeaders.LOCATION, path);
    }
}
