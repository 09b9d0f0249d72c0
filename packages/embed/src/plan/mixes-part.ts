/** What a sketch whose papers take turns needs for its jobs; loaded when there is one. */
export { cutJobs } from '@trimwell/sketch';
