package org.axlecause.shared;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Cookie;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.ext.Provider;

/** Puts the gate before every route, and tells each bearer what is left of its quota (RateLimit header fields of the IETF draft). */
@Provider
class GateFilter implements ContainerRequestFilter, ContainerResponseFilter {

    private static final String QUOTA = GateFilter.class.getName() + ".quota";
    private static final String TELL_LATER = "Too many requests with this key: at most %d in %d s. Wait %d s.";

    private final Gate gate;

    @Context
    @SuppressWarnings("NullAway.Init")
    ResourceInfo resource;

    GateFilter(Gate gate) {
        this.gate = gate;
    }

    @Override
    public void filter(ContainerRequestContext request) {
        Class<?> answering = resource.getResourceClass();
        boolean page = answering.isAnnotationPresent(Page.class);
        if (page && resource.getResourceMethod().isAnnotationPresent(ForStrangers.class)) {
            return;
        }
        Cookie session = page ? request.getCookies().get(Visit.SESSION) : null;
        Quota quota = gate.admit(
                request.getHeaderString(HttpHeaders.AUTHORIZATION),
                session == null ? null : session.getValue(),
                answering,
                resource.getResourceMethod());
        if (quota != null) {
            request.setProperty(QUOTA, quota);
            if (quota.exceeded()) {
                throw RefusedException.because(
                        RefusedException.Reason.TOO_MANY_REQUESTS,
                        TELL_LATER.formatted(quota.limit(), quota.window().toSeconds(), seconds(quota)));
            }
        }
    }

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext answer) {
        if (request.getProperty(QUOTA) instanceof Quota quota) {
            String name = '"' + quota.name() + '"';
            MultivaluedMap<String, Object> headers = answer.getHeaders();
            headers.putSingle(
                    "RateLimit-Policy",
                    name + ";q=" + quota.limit() + ";w=" + quota.window().toSeconds());
            headers.putSingle("RateLimit", name + ";r=" + quota.left() + ";t=" + seconds(quota));
            if (quota.exceeded()) {
                headers.putSingle(HttpHeaders.RETRY_AFTER, seconds(quota));
            }
        }
    }

    private static long seconds(Quota quota) {
        return quota.untilNext().plusSeconds(1).minusNanos(1).toSeconds();
    }
}
