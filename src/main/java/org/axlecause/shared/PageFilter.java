package org.axlecause.shared;

import com.fasterxml.jackson.core.JsonProcessingException;
import jakarta.annotation.Priority;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Cookie;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.NewCookie;
import jakarta.ws.rs.ext.Provider;
import java.lang.annotation.Annotation;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.axlecause.shared.RefusedException.Reason;

/**
 * What holds for every page: nothing from elsewhere and nothing inline (Content-Security-Policy level 3), no form from
 * another site, a refusal in words on a page, and the way to sign in for those who haven't.
 */
@Provider
@Priority(PageFilter.BEFORE_THE_GATE)
class PageFilter implements ContainerRequestFilter, ContainerResponseFilter {

    static final int BEFORE_THE_GATE = 100;

    private static final String IS_PAGE = PageFilter.class.getName() + ".page";
    private static final MediaType HTML = MediaType.TEXT_HTML_TYPE.withCharset("UTF-8");
    private static final MediaType PROBLEM = MediaType.valueOf(Problem.MEDIA_TYPE);
    private static final int SEE_OTHER = 303;
    private static final int NONCE_BYTES = 16;
    private static final Pattern NONCE = Pattern.compile("[0-9a-f]{32}");
    private static final Pattern ELSEWHERE = Pattern.compile("/(v1|q)(/.*)?");
    private static final Set<String> OWN_SITE = Set.of("same-origin", "none");
    private static final String POLICY = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self';"
            + " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private final Visit visit;
    private final ProblemPage problemPage;

    @Context
    @SuppressWarnings("NullAway.Init")
    ResourceInfo resource;

    PageFilter(Visit visit, ProblemPage problemPage) {
        this.visit = visit;
        this.problemPage = problemPage;
    }

    @Override
    public void filter(ContainerRequestContext request) {
        if (!resource.getResourceClass().isAnnotationPresent(Page.class)) {
            return;
        }
        request.setProperty(IS_PAGE, true);
        URI uri = request.getUriInfo().getRequestUri();
        visit.comes(
                uri.getRawPath() + (uri.getRawQuery() == null ? "" : "?" + uri.getRawQuery()),
                uri.getScheme().equals("https") || "https".equals(request.getHeaderString("X-Forwarded-Proto")));
        Cookie sent = request.getCookies().get(Visit.FORMS);
        if (sent != null && NONCE.matcher(sent.getValue()).matches()) {
            visit.has(sent.getValue(), false);
        } else {
            visit.has(HexFormat.of().formatHex(Seal.randomBytes(NONCE_BYTES)), true);
        }
        if (!isReading(request) && !isFromHere(request)) {
            throw RefusedException.notAllowed(
                    "The form was sent from another site. Open the page here and send it again.");
        }
    }

    private static boolean isReading(ContainerRequestContext request) {
        return request.getMethod().equals(HttpMethod.GET) || request.getMethod().equals(HttpMethod.HEAD);
    }

    /** By Fetch Metadata where the browser sends it, else by its Origin. */
    private static boolean isFromHere(ContainerRequestContext request) {
        String site = request.getHeaderString("Sec-Fetch-Site");
        if (site != null) {
            return OWN_SITE.contains(site);
        }
        String origin = request.getHeaderString("Origin");
        String host = request.getHeaderString(HttpHeaders.HOST);
        return origin == null || (host != null && origin.endsWith("://" + host));
    }

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext answer) {
        boolean page = request.getProperty(IS_PAGE) != null;
        if (answer.getEntity() instanceof String text
                && PROBLEM.isCompatible(answer.getMediaType())
                && isRead(request)
                && (page
                        || !ELSEWHERE
                                .matcher(request.getUriInfo().getRequestUri().getRawPath())
                                .matches())) {
            page = true;
            show(problem(text), request, answer);
        }
        if (!page) {
            return;
        }
        MultivaluedMap<String, Object> headers = answer.getHeaders();
        headers.putIfAbsent("Content-Security-Policy", List.of(POLICY));
        headers.putSingle("X-Content-Type-Options", "nosniff");
        headers.putSingle("Referrer-Policy", "same-origin");
        headers.putSingle("Cross-Origin-Opener-Policy", "same-origin");
        headers.putSingle("Cross-Origin-Resource-Policy", "same-origin");
        headers.putSingle("Permissions-Policy", "camera=(), geolocation=(), microphone=(), payment=(), usb=()");
        headers.putSingle(HttpHeaders.CACHE_CONTROL, "private, no-store");
        headers.putSingle(HttpHeaders.VARY, HttpHeaders.ACCEPT);
        if (visit.begun()) {
            headers.add(
                    HttpHeaders.SET_COOKIE,
                    new NewCookie.Builder(Visit.FORMS)
                            .value(visit.nonce())
                            .path("/")
                            .httpOnly(true)
                            .secure(visit.secure())
                            .sameSite(NewCookie.SameSite.STRICT)
                            .build());
        }
    }

    /** Only a browser names HTML; a program gets the problem document. */
    private static boolean isRead(ContainerRequestContext request) {
        return request.getAcceptableMediaTypes().stream()
                .anyMatch(accepted -> accepted.getType().equals("text")
                        && accepted.getSubtype().equals("html"));
    }

    private void show(Problem problem, ContainerRequestContext request, ContainerResponseContext answer) {
        if (problem.status() == Reason.NOT_AUTHENTICATED.status() && isReading(request)) {
            answer.setStatus(SEE_OTHER);
            answer.setEntity(null);
            answer.getHeaders().remove(HttpHeaders.WWW_AUTHENTICATE);
            answer.getHeaders().remove(HttpHeaders.CONTENT_TYPE);
            answer.getHeaders()
                    .putSingle(
                            HttpHeaders.LOCATION,
                            "/sign-in?to=" + URLEncoder.encode(visit.address(), StandardCharsets.UTF_8));
        } else {
            Cookie session = request.getCookies().get(Visit.SESSION);
            answer.setEntity(
                    problemPage.html(problem, session == null ? "" : session.getValue()), new Annotation[0], HTML);
        }
    }

    private static Problem problem(String text) {
        try {
            return Json.mapper().readValue(text, Problem.class);
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException("A problem document is plain JSON", broken);
        }
    }
}
